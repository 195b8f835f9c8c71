import { languages } from '../../languages/languages'
import type { Terms } from '../../languages/terms'
import { unitOfStep } from '../../pattern/unit'
import type { StepWork } from '../../pattern/workPiece'
import type { Slice } from './profile'

/**
 * How long each step makes the piece, mm; 0 where it adds nothing to its length, and for a heel,
 * which makes it longer on one half only.
 */
export function lengthsOf(slices: readonly Slice[], steps: number): readonly number[] {
  const lengths = new Array<number>(steps).fill(0)
  for (const { step, height } of slices) lengths[step] = (lengths[step] ?? 0) + height
  for (const { step, out } of slices) if (out > 0) lengths[step] = 0
  return lengths
}

/** From cast-on to bind-off, mm: what the lengths of the steps come to as each is told, to the millimetre. */
export function lengthOfPiece(slices: readonly Slice[]): number {
  const lengths = new Map<number, number>()
  for (const { step, height } of slices) lengths.set(step, (lengths.get(step) ?? 0) + height)
  return [...lengths.values()].reduce((sum, length) => sum + Math.round(length), 0)
}

/** "12 rounds", "30 rows"; null for a step without any. */
export function rowsCounted(step: StepWork, terms: Terms): string | null {
  const unit = unitOfStep(step)
  const count = step.rows?.rows.length ?? 0
  return unit && languages[terms].rows(count, unit)
}
