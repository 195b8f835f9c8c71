import type { Chart, NamedChart } from '../../pattern/pattern'
import { isJoinedAfter, onChart } from '../../pattern/charts'
import { firstStepOf, workPattern } from '../../pattern/work'
import type { PieceWork } from '../../pattern/workPiece'
import { checkPattern } from '../check'
import { firstWork, type PieceRule } from './rule'
import { counted } from '../../languages/english/forms'

/** The errors that a chart was found to have, and all that this hangs on. */
interface Known {
  readonly hangsOn: readonly unknown[]
  readonly errors: readonly string[]
}
const known = new WeakMap<Chart, Known>()

/** Messages of the errors in a chart, as its own reading would find them. */
function errorsOf(piece: PieceWork, { name, chart, aside }: NamedChart): readonly string[] {
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

/** The chart that is looked at is checked by itself; the others must not be forgotten. */
export const otherCharts: PieceRule = {
  id: 'piece-chart',
  title: 'Errors in another chart',
  severity: 'error',
  always: true,
  check: (piece, besides) =>
    piece.pattern.charts.flatMap((named) => {
      const { name } = named
      const errors = name === besides ? [] : errorsOf(piece, named)
      const [first] = errors
      if (first === undefined) return []
      const more = errors.length - 1
      return [
        {
          step: firstStepOf(piece.pattern, name),
          message: `In the chart “${name}”: ${first}${more > 0 ? ` (and ${counted(more, 'error')} more)` : ''}`,
          advice: 'Open that chart to see where, and to mend it.',
          fixes: [{ label: `Open “${name}”`, edit: (p) => onChart(p, name) }],
        },
      ]
    }),
}
