import type { BindOff, CastOn, How, Move } from './move'

/**
 * Yarn that a move uses, in widths and heights of one stitch. Our own reckoning, for comparing
 * stitches with a weighed swatch; it is printed with every estimate. A loop is taken as two widths
 * (its head and the strand to its neighbour) and two heights (its legs); an e-wrap goes round the
 * peg and crosses, which makes it the longest (common practice), a flat knit is the shortest.
 */
interface Length {
  readonly widths: number
  readonly heights: number
}

const length = (widths: number, heights: number): Length => ({ widths, heights })
const nothing = length(0, 0)

const worked: Readonly<Record<How, Length>> = {
  flat: length(2, 2),
  true: length(2, 2),
  purl: length(2, 2),
  'u-wrap': length(2.25, 2),
  'twisted purl': length(2.25, 2),
  'e-wrap': length(3, 2),
}

const laid: Readonly<Record<'yarn over' | 'tuck' | 'wrap' | 'German turn', Length>> = {
  'yarn over': length(1.5, 1),
  tuck: length(1, 1),
  wrap: length(2, 0),
  'German turn': length(1, 2),
}

/** A drawstring goes past each peg a second time, behind it: that is a move of its own. */
const castOn: Readonly<Record<CastOn, Length>> = {
  'e-wrap': length(3, 1),
  'double e-wrap': length(5, 2),
  chain: length(4, 1),
  'long-tail': length(5, 1),
  drawstring: length(1, 0),
}

/** Tails: gathered about twice round, sewn about three times (common practice). */
const letGo: Readonly<Record<BindOff, Length>> = {
  basic: nothing,
  elastic: nothing,
  'three-needle': nothing,
  sewn: length(3, 0),
  gather: length(2, 0),
  graft: length(2, 2),
}

/** Length of yarn a move uses, in mm, for stitches of this width and height in mm. */
export function yarnOf(move: Move, stitch: { width: number; height: number }): number {
  const of = ({ widths, heights }: Length): number =>
    widths * stitch.width + heights * stitch.height
  switch (move.do) {
    case 'work':
      return of(worked[move.how])
    case 'lay':
      return of(laid[move.as])
    case 'draw':
      return of(worked.flat)
    case 'pass':
      return stitch.width
    case 'cast on':
      return of(castOn[move.how])
    case 'let go':
      return of(letGo[move.how])
    case 'move':
      return leanOf(move.from, move.to, stitch)
    default:
      return 0
  }
}

/**
 * How much more yarn a loop takes that stands over another peg than it came from, mm: both its legs lean
 * over the pegs between.
 */
export function leanOf(
  from: number,
  to: number,
  { width, height }: { width: number; height: number },
): number {
  return 2 * (Math.hypot(Math.abs(to - from) * width, height) - height)
}
