import { runsRightToLeft } from '../../loom/direction'
import type { LoomSetup } from '../../pattern/pattern'

/**
 * Where pegs stand from left to right as the right side is seen, in stitch widths from the middle.
 * A ring is cut open opposite the middle; a bar does not turn.
 */
export interface Across {
  readonly pegs: number
  /** Centre of a peg. */
  readonly of: (peg: number) => number
  /** The peg at this place, or -1. */
  readonly pegAt: (x: number) => number
  /** From one peg to another. Loops are never moved over the join, so it is not gone round. */
  readonly way: (from: number, to: number) => number
}

/** The peg at the middle when peg 1 stands at its edge, as in the flat chart. */
export const middlePeg = ({ pegs, direction }: Pick<LoomSetup, 'pegs' | 'direction'>): number =>
  runsRightToLeft(direction) ? Math.ceil(pegs / 2) - 1 : Math.floor(pegs / 2)

/** The middle after what lies in front has been turned by so many pegs to the right, as it is seen. */
export function turnedBy(
  { pegs, direction }: Pick<LoomSetup, 'pegs' | 'direction'>,
  turn: number,
  toTheRight: number,
): number {
  const peg = turn + (runsRightToLeft(direction) ? toTheRight : -toTheRight)
  return ((peg % pegs) + pegs) % pegs
}

export function acrossOf(
  loom: Pick<LoomSetup, 'pegs' | 'direction' | 'shape'>,
  turn: number,
): Across {
  const { pegs, direction, shape } = loom
  const ring = shape === 'ring'
  const middle = ring ? turn : middlePeg(loom)
  const sign = runsRightToLeft(direction) ? -1 : 1
  // An even number of pegs has none at the very middle: the fabric lies half a stitch aside.
  const aside = pegs % 2 === 0 ? 0.5 : 0
  const wrap = (x: number): number => x - pegs * Math.floor(x / pegs + 0.5)
  return {
    pegs,
    of: (peg) => wrap(sign * (peg - middle)) + aside,
    pegAt: (x) => {
      const peg = Math.round(middle + sign * (x - aside)) + 0
      if (ring) return ((peg % pegs) + pegs) % pegs
      return peg >= 0 && peg < pegs ? peg : -1
    },
    way: (from, to) => sign * (to - from),
  }
}
