import { fix } from '../../pattern/finding'
import { onChart } from '../../pattern/charts'
import { firstStepOf } from '../../pattern/work'
import type { PieceRule } from '../rule'
import { counted } from '../../languages/english/forms'

/** The chart that is looked at is checked by itself; the others must not be forgotten. */
export const otherCharts: PieceRule = {
  id: 'piece-chart',
  title: 'Errors in another chart',
  severity: 'error',
  scope: 'piece',
  always: true,
  check: ({ pattern }, errorsIn) =>
    pattern.charts.flatMap((named) => {
      const { name } = named
      const errors = errorsIn(named)
      const [first] = errors
      if (first === undefined) return []
      const more = errors.length - 1
      return [
        {
          step: firstStepOf(pattern, name),
          message: `In the chart “${name}”: ${first}${more > 0 ? ` (and ${counted(more, 'error')} more)` : ''}`,
          advice: 'Open that chart to see where, and to mend it.',
          fixes: [fix(`Open “${name}”`, (p) => onChart(p, name))],
        },
      ]
    }),
}
