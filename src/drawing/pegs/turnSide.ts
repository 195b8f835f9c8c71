import type { Moment } from '../../loom/walk'

/**
 * Does a German turn's strand on this peg lie high on the side of the lower peg number? It does
 * when work went back that way. Told by the move that laid it when that is among the moments; else
 * by where the peg lies: those still ahead of the yarn were turned at the end of a row forward.
 */
export function turnedForward(peg: number, moments: readonly Moment[]): boolean {
  for (let index = moments.length - 1; index >= 0; index--) {
    const { move, heading } = moments[index] as Moment
    if (move?.do === 'lay' && move.as === 'German turn' && move.peg === peg)
      return heading === 'forward'
  }
  const now = moments.at(-1)
  return !now || peg >= now.gap
}
