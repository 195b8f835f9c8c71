import type { FabricDrawing } from '../../drawing/fabric/fabric'
import type { Layer } from '../../drawing/scene'
import type { Zoom } from '../charts/zoom.svelte'

/** How much is drawn beyond what is seen, on either side, in heights of the view. */
const beyond = 0.6
/** What is drawn follows the scrolling in steps of this part of the view. */
const stepPart = 1 / 24

/** From top to bottom of a drawing, mm. */
interface Band {
  readonly from: number
  readonly to: number
}

/** The part of a drawing that is in view, and some more round it. Made while a component is set up. */
export class InView {
  #band = $state.raw<Band>({ from: 0, to: -1 })

  constructor(zoom: Zoom, svg: () => SVGSVGElement | undefined) {
    $effect(() => {
      const { view, scale } = zoom
      const drawn = svg()
      if (!view || !drawn) return
      const look = () => this.#look(view, drawn, scale)
      look()
      const watch = new ResizeObserver(look)
      watch.observe(view)
      watch.observe(drawn)
      view.addEventListener('scroll', look, { passive: true })
      return () => {
        watch.disconnect()
        view.removeEventListener('scroll', look)
      }
    })
  }

  get band(): Band {
    return this.#band
  }

  #look(view: HTMLElement, svg: SVGSVGElement, scale: number): void {
    const height = view.clientHeight / scale
    const step = height * stepPart
    const top = (view.getBoundingClientRect().top - svg.getBoundingClientRect().top) / scale
    const from = Math.floor((top - beyond * height) / step) * step
    const to = from + Math.ceil((1 + 2 * beyond) / stepPart + 1) * step
    if (from !== this.#band.from || to !== this.#band.to) this.#band = { from, to }
  }
}

/** How far up and down the loops of each layer may reach, mm. */
export function reachOf({ placed, scene, geometry }: FabricDrawing): readonly Band[] {
  const { height } = geometry.stitch
  return scene.layers.map(({ y }, index) => {
    const row = placed[index - 1]
    // What lies behind all rows.
    if (!row) return { from: -Infinity, to: Infinity }
    let highest = 0
    let lowest = 0
    for (const { head, bases } of row.loops) {
      if (head.y > highest) highest = head.y
      for (const { y: base, opened } of bases) if (base - opened < lowest) lowest = base - opened
    }
    return { from: y - (highest + 1) * height, to: y - (lowest - 1) * height }
  })
}

export const layersIn = (
  layers: readonly Layer[],
  reach: readonly Band[],
  { from, to }: Band,
): readonly Layer[] =>
  layers.filter((_, index) => {
    const own = reach[index]
    return own !== undefined && own.to >= from && own.from <= to
  })
