import type { Geometry } from '../../drawing/geometry'
import type { Point } from '../../drawing/path'
import type { Spot } from '../../pattern/history'
import type { Bench } from '../state/bench.svelte'

/** A corner of the mark that can be dragged: where it is drawn, its cell and the other one. */
export interface Handle {
  readonly at: Point
  readonly cell: Spot
  readonly other: Spot
}

/** px within which a finger is on a handle. */
const reach = 22

/** The two corners of what is marked; none where nothing is. */
export function handlesOf({ spot, corner }: Bench, geometry: Geometry): readonly Handle[] {
  if (!corner) return []
  return [handle(geometry, spot, corner), handle(geometry, corner, spot)].filter(
    (one) => one !== null,
  )
}

/** The corner of a cell that is farthest from the other cell; of the same cell, one and the one across. */
function handle(geometry: Geometry, cell: Spot, other: Spot): Handle | null {
  const corners = geometry.corners(cell.row, cell.peg)
  if (!corners) return null
  const [bottomLeft, bottomRight, topRight, topLeft] = corners
  const isUp = cell.row > other.row
  const slot = (peg: number) => geometry.slots.slotOf(peg) ?? 0
  const isOn = slot(cell.peg) === slot(other.peg) ? isUp : slot(cell.peg) > slot(other.peg)
  const isLeft = isOn === geometry.slots.leftward
  const at = isUp ? (isLeft ? topLeft : topRight) : isLeft ? bottomLeft : bottomRight
  return { at, cell, other }
}

/** The handle under a finger. */
export function handleUnder(
  bench: Bench,
  geometry: Geometry,
  svg: SVGSVGElement,
  { clientX, clientY }: PointerEvent,
): Handle | null {
  const matrix = svg.getScreenCTM()
  if (!matrix) return null
  const away = ({ at: [x, y] }: Handle): number => {
    const seen = new DOMPoint(x, y).matrixTransform(matrix)
    return Math.hypot(seen.x - clientX, seen.y - clientY)
  }
  const [nearest] = handlesOf(bench, geometry).toSorted((a, b) => away(a) - away(b))
  return nearest && away(nearest) <= reach ? nearest : null
}
