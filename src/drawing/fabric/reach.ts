import type { Layer } from '../scene'
import type { FabricDrawing } from './fabric'

/** From top to bottom of a drawing, mm. */
export interface Band {
  readonly from: number
  readonly to: number
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
