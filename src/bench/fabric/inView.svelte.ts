import type { Band } from '../../drawing/fabric/reach'
import { whenIdle } from '../widgets/whenIdle'
import type { Zoom } from '../charts/zoom.svelte'

/** How much is drawn beyond what is seen, on either side, in heights of the view. */
const beyond = 0.6
/** What is drawn follows the scrolling in steps of this part of the view. */
const stepPart = 1 / 24
/** What was drawn stays so far beyond what is seen, in heights of the screen. */
const mostKept = 1

interface Settings {
  readonly zoom: Zoom
  readonly svg: () => SVGSVGElement | undefined
  /** What makes every row look different when it changes: then only what is in view is drawn first. */
  readonly turned: () => unknown
  /** Height of the whole drawing, mm, where all of it may be drawn; null where it is too much. */
  readonly whole: () => number | null
}

/**
 * The part of a drawing that is drawn: what is in view and some more round it; the rest is added
 * while nothing else is to be done, so that moving the view draws nothing. Made while a component
 * is set up.
 */
export class InView {
  #band = $state.raw<Band>({ from: 0, to: -1 })

  constructor({ zoom, svg, turned, whole }: Settings) {
    $effect(() => {
      const { view, scale } = zoom
      const drawn = svg()
      turned()
      if (!view || !drawn) return
      this.#band = seen(view, drawn, scale)
    })
    // One watch for as long as the view is there: a new one while sizes are being told is told too late.
    $effect(() => {
      const { view } = zoom
      const drawn = svg()
      if (!view || !drawn) return
      const look = () => {
        const { scale } = zoom
        this.#band = joined(this.#band, seen(view, drawn, scale), scale)
      }
      const watch = new ResizeObserver(look)
      watch.observe(view)
      watch.observe(drawn)
      view.addEventListener('scroll', look, { passive: true })
      return () => {
        watch.disconnect()
        view.removeEventListener('scroll', look)
      }
    })
    $effect(() => {
      const height = whole()
      const { from, to } = this.#band
      const { view, scale } = zoom
      if (height === null || !view || to < from || (from <= 0 && to >= height)) return
      const more = (view.clientHeight / scale) * stepPart
      return whenIdle(() => {
        this.#band = { from: from - more, to: to + more }
      })
    })
  }

  get band(): Band {
    return this.#band
  }
}

/** What is in view of a drawing, and some more on either side, mm. */
function seen(view: HTMLElement, svg: SVGSVGElement, scale: number): Band {
  const height = view.clientHeight / scale
  const step = height * stepPart
  const top = (view.getBoundingClientRect().top - svg.getBoundingClientRect().top) / scale
  const from = Math.floor((top - beyond * height) / step) * step
  return { from, to: from + Math.ceil((1 + 2 * beyond) / stepPart + 1) * step }
}

/** What is drawn already is kept where it adjoins, up to some heights of the screen. */
function joined(was: Band, now: Band, scale: number): Band {
  if (was.from <= now.from && was.to >= now.to) return was
  if (was.to < now.from || was.from > now.to) return now
  const keep = (mostKept * screen.height) / scale
  return {
    from: Math.max(Math.min(was.from, now.from), now.from - keep),
    to: Math.min(Math.max(was.to, now.to), now.to + keep),
  }
}
