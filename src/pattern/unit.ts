import type { PieceWork, StepWork } from './workPiece'

/** Whole rounds of a ring are rounds, all else is rows (common practice). */
export type Unit = 'round' | 'row'

/** What the rows of a step are counted in; null for a step without any. */
export function unitOfStep({ rows, toAndFro, pegs }: StepWork): Unit | null {
  const list = rows?.rows ?? []
  if (list.length === 0) return null
  const round =
    !toAndFro &&
    list.every(({ row }) => row.end === 'on' && row.from <= pegs.from && row.to >= pegs.to)
  return round ? 'round' : 'row'
}

/** What the rows of a piece are counted in, all together: rounds where every one of them goes round. */
export const unitOfPiece = ({ pattern, steps }: PieceWork): Unit =>
  pattern.loom.shape === 'ring' && steps.every((step) => unitOfStep(step) !== 'row')
    ? 'round'
    : 'row'
