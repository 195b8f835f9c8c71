import type { Heading } from '../loom/direction'
import type { LoomSetup, Run } from './pattern'

/** Rows on pegs in work begin at the end beside which the yarn hangs, in this gap of so many pegs. */
export function headingFrom(
  gap: number,
  length: number,
  { from, to }: Run,
  shape: LoomSetup['shape'],
): Heading {
  if (gap === from) return 'forward'
  if (gap === to + 1) return 'back'
  if (shape === 'ring' && gap % length === from) return 'forward'
  if (shape === 'ring' && gap === (to + 1) % length) return 'back'
  return gap > from ? 'back' : 'forward'
}

/** Work that went to and fro over a ring and ended at its join goes on in the round, from peg 1. */
export const entersRound = (gap: number, pegs: number): boolean => gap % pegs === 0

/**
 * In the round the last gap is the first one again. To and fro it is not: where a row ended on the last
 * peg of a ring, the yarn hangs on that side of the join, in the last gap.
 */
export const gapToAndFro = (
  gap: number,
  last: { readonly to: number; readonly heading: Heading } | undefined,
  pegs: number,
): number => (gap === 0 && last?.heading === 'forward' && last.to === pegs - 1 ? pegs : gap)
