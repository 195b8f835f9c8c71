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

/**
 * "12 rounds", "30 rows": whole rounds of a ring are rounds, all else is rows (common practice).
 * Null for a step without any.
 */
export function rowsCounted({ rows, toAndFro, pegs }: StepWork): string | null {
  const list = rows?.rows ?? []
  if (list.length === 0) return null
  const round =
    !toAndFro &&
    list.every(({ row }) => row.end === 'on' && row.from <= pegs.from && row.to >= pegs.to)
  const noun = round ? 'round' : 'row'
  return `${list.length} ${noun}${list.length === 1 ? '' : 's'}`
}
