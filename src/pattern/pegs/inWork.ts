import type { Heading } from '../../loom/direction'
import type { LoomSetup, Pattern, Run } from '../pattern'
import type { Step } from '../piece'

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

/** Is work back and forth after this step? On a rake always; a run of pegs always is. */
export const turnsBack = (
  { shape }: Pick<LoomSetup, 'shape'>,
  step: Extract<Step, { kind: 'pegs' }>,
): boolean => shape === 'bar' || step.toAndFro || step.run !== null

/** Is the chart of this name worked back and forth by every step that works it? No without one. */
export function isBackAndForth({ loom, steps }: Pattern, chart: string): boolean {
  let now = loom.shape === 'bar'
  let used = false
  for (const step of steps) {
    if (step.kind === 'pegs') now = turnsBack(loom, step)
    if (step.kind !== 'chart' || step.chart !== chart) continue
    if (!now) return false
    used = true
  }
  return used
}
