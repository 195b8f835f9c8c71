import type { Unit } from '../languages/unit'
import type { LoomState } from '../loom/state'
import { holdsTurn } from '../loom/strand'
import type { Habits } from '../loom/work'
import { memo } from './memo'
import { together } from './pegs/together'
import type { PatternRun } from './work'
import type { PieceWork, StepWork } from './workPiece'

/** Does it go once round a ring, without a turn? One whose chart leaves pegs out does, too. */
export const goesRound = ({ row, before, heading }: PatternRun, shape: Habits['shape']): boolean =>
  shape === 'ring' &&
  row.end === 'on' &&
  heading === 'forward' &&
  row.from === 0 &&
  (!row.isPart || row.to === before.stacks.length - 1)

/** Does a peg hold a strand of a turn that is not worked off yet? */
export const waitsTurned = memo(({ stacks }: LoomState) => stacks.some(holdsTurn))

/**
 * What a row is called, in the words and wherever it is named: a round where it goes round a ring. Short
 * rows go on until the last doubled or wrapped peg is worked as one, so that a heel is told in rows to its end.
 */
export const unitOfRow = (run: PatternRun, shape: Habits['shape']): Unit =>
  goesRound(run, shape) && !waitsTurned(run.before) ? 'round' : 'row'

/** What the rows of a step are counted in; null for a step without any. */
export function unitOfStep({ rows, toAndFro, pegs }: StepWork): Unit | null {
  const list = rows?.rows ?? []
  if (list.length === 0) return null
  const round =
    !toAndFro &&
    list.every(({ row }) => row.end === 'on' && row.from <= pegs.from && row.to >= pegs.to)
  return round ? 'round' : 'row'
}

/** What the rows of a piece are counted in, all together: rounds where each goes round, alone or with others. */
export function unitOfPiece(work: PieceWork): Unit {
  const { parts } = together(work)
  const goRound = (step: StepWork, index: number): boolean =>
    unitOfStep(step) !== 'row' || step.rows?.rows.length === parts[index]
  return work.pattern.loom.shape === 'ring' && work.steps.every(goRound) ? 'round' : 'row'
}
