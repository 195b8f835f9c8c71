import { chartOn } from '../../../src/pattern/charts'
import { withChart } from '../../../src/pattern/edits/chart'
import { newPattern, type Pattern, type Sheet } from '../../../src/pattern/pattern'
import { cellsFrom } from '../../cells'

/** A pattern whose rows are written as cells, first row first: "k p 2/2_LC . . . k" (. continues). */
export function patternOf(...rows: string[]): Pattern {
  const cells = rows.map((row) =>
    cellsFrom(row.split(/\s+/).map((cell) => (cell === '.' ? '' : cell.replace('_', ' ')))),
  )
  const columns = cells[0]?.length ?? 0
  return withChart(newPattern(columns, rows.length), {
    rows: cells.map((list) => ({ cells: list, run: null, heading: null, end: 'on' as const })),
  })
}

/** The rows again, in the same form. */
export const textOf = (pattern: Sheet): string[] =>
  chartOn(pattern).rows.map(({ cells }) =>
    cells.map((cell) => cell?.id.replace(' ', '_') ?? '.').join(' '),
  )
