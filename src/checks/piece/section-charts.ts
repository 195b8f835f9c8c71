import { openSection } from '../../pattern/edits/piece'
import type { Chart } from '../../pattern/pattern'
import { isJoinedAfter, withOnBench } from '../../pattern/sections'
import { firstStepOf, workPattern } from '../../pattern/work'
import type { PieceWork } from '../../pattern/workPiece'
import { checkPattern } from '../check'
import { firstWork, type PieceRule } from './rule'
import { counted } from '../../languages/english/forms'

/** What a chart off the bench was found to be, and all that this hangs on. */
interface Known {
  readonly hangsOn: readonly unknown[]
  readonly errors: readonly string[]
}
const known = new WeakMap<Chart, Known>()

/** Messages of the errors in the chart of a section, as its own reading would find them. */
function errorsOf(piece: PieceWork, name: string, chart: Chart): readonly string[] {
  const { pattern } = piece
  const { loom, making, gauge, style, checks } = pattern
  const onBench = withOnBench(pattern, name)
  const joined = isJoinedAfter(onBench)
  const step = piece.steps[firstStepOf(pattern, name) ?? -1]
  const hangsOn = [loom, making, gauge, style, checks.off, checks.longestFloat, joined, step]
  const last = known.get(chart)
  if (last?.hangsOn.every((part, index) => part === hangsOn[index])) return last.errors
  const { findings } = checkPattern(firstWork(piece, name) ?? workPattern(onBench))
  const errors = findings.flatMap(({ severity, message }) =>
    severity === 'error' ? [message] : [],
  )
  known.set(chart, { hangsOn, errors })
  return errors
}

/** The bench checks the chart that lies on it; the others must not be forgotten. */
export const sectionCharts: PieceRule = {
  id: 'piece-chart',
  title: 'Errors in another chart',
  severity: 'error',
  check: (piece) =>
    piece.pattern.piece.others.flatMap(({ name, chart }) => {
      const errors = errorsOf(piece, name, chart)
      const [first] = errors
      if (first === undefined) return []
      const more = errors.length - 1
      const at = firstStepOf(piece.pattern, name)
      return [
        {
          step: at,
          message: `In the chart “${name}”: ${first}${more > 0 ? ` (and ${counted(more, 'error')} more)` : ''}`,
          advice: 'Open that chart to see where, and to mend it.',
          fixes: [{ label: `Open “${name}”`, edit: (p) => openSection(p, name) }],
        },
      ]
    }),
}
