import { cellRatio } from '../../drawing/geometry'
import { ringGeometry, type RingOptions } from '../../drawing/ringGeometry'
import type { Work } from '../../pattern/work'

const step = 0.1

/** Options for a ring whose rings are `side` mm high and whose innermost cells are `side` mm wide. */
const withSide = ({ pattern }: Work, side: number): RingOptions => ({
  cell: side / cellRatio(pattern),
  innermost: side,
})

/**
 * The ring chart as large as it fits in a square of `room` mm; cells are no larger than `most` mm.
 * `side` is that of its smallest cells; `options` is null when it does not fit at all.
 */
export function largestRing(
  work: Work,
  room: number,
  most: number,
): { readonly side: number; readonly options: RingOptions | null } {
  for (let side = most; side >= step; side -= step) {
    const options = withSide(work, side)
    if (ringGeometry(work, options).width <= room) return { side, options }
  }
  return { side: 0, options: null }
}
