import { isJoinedAfter } from '../../pattern/charts'
import type { Chart, NamedChart } from '../../pattern/pattern'
import { firstStepOf, workPattern } from '../../pattern/work'
import type { PieceWork } from '../../pattern/workPiece'
import { checkPattern } from '../check'
import { firstWork } from './steps'

/** The errors that a chart was found to have, and all that this hangs on. */
interface Known {
  readonly hangsOn: readonly unknown[]
  readonly errors: readonly string[]
}
const known = new WeakMap<Chart, Known>()

/** Messages of the errors in a chart, as its own reading would find them. */
export function errorsOf(piece: PieceWork, { name, chart, aside }: NamedChart): readonly string[] {
  const { pattern } = piece
  const { loom, making, gauge, style, checks } = pattern
  const joined = isJoinedAfter(pattern, name)
  const step = piece.steps[firstStepOf(pattern, name) ?? -1]
  const hangsOn = [loom, making, gauge, style, checks.off, checks.longestFloat, aside, joined, step]
  const last = known.get(chart)
  if (last?.hangsOn.every((part, index) => part === hangsOn[index])) return last.errors
  const { findings } = checkPattern(
    firstWork(piece, name) ?? workPattern(pattern, undefined, null, name),
  )
  const errors = findings.flatMap(({ severity, message }) =>
    severity === 'error' ? [message] : [],
  )
  known.set(chart, { hangsOn, errors })
  return errors
}
