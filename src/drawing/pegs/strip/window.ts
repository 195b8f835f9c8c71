import { runsRightToLeft } from '../../../loom/direction'
import type { LoomSetup } from '../../../pattern/pattern'

/** Which pegs a strip shows: a run (over the join of a ring when `from` is more than `to`), or some round a peg. */
export type StripPart =
  | { readonly from: number; readonly to: number }
  | { readonly centre: number; readonly count: number }

/** Pegs side by side, in peg order. `leftward`: rising pegs go to the left. Pegs are 0-based. */
export interface StripPegs {
  readonly pegs: readonly number[]
  readonly leftward: boolean
  /** Place from the left, 0-based; undefined for a peg that is not shown. */
  readonly placeOf: (peg: number) => number | undefined
  /** Place of a gap from the left edge (0) to the right edge (count), or null when it is not shown. */
  readonly placeOfGap: (gap: number) => number | null
}

const within = (n: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, n))

/** The pegs of a strip. On a ring it goes on over the join; on a bar it ends at the edges. */
export function stripPegs({ pegs: all, shape, direction }: LoomSetup, part: StripPart): StripPegs {
  const ring = shape === 'ring'
  let first: number
  let count: number
  if ('count' in part) {
    count = within(Math.round(part.count), 1, all)
    first = Math.round(part.centre) - Math.floor((count - 1) / 2)
    if (!ring) first = within(first, 0, all - count)
  } else if (ring) {
    first = part.from
    const span = part.to - part.from
    count = within((span < 0 ? span + all : span) + 1, 1, all)
  } else {
    first = within(Math.min(part.from, part.to), 0, all - 1)
    count = within(Math.max(part.from, part.to), 0, all - 1) - first + 1
  }
  const wrap = (n: number): number => ((n % all) + all) % all
  const pegs = Array.from({ length: count }, (_, index) => wrap(first + index))
  const leftward = runsRightToLeft(direction)
  const indexOf = new Map(pegs.map((peg, index) => [peg, index]))
  const placeOf = (peg: number): number | undefined => {
    const index = indexOf.get(ring ? wrap(peg) : peg)
    return index === undefined ? undefined : leftward ? count - 1 - index : index
  }
  return {
    pegs,
    leftward,
    placeOf,
    placeOfGap: (gap) => {
      const after = placeOf(gap)
      if (after !== undefined) return leftward ? after + 1 : after
      const before = placeOf(gap - 1)
      return before === undefined ? null : leftward ? before : before + 1
    },
  }
}
