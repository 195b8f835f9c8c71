import type { Chart, Pattern, Row } from '../pattern'

/** Shared ground of the edits: replace parts of a chart and keep everything else by identity. */
export const withChart = (pattern: Pattern, change: Partial<Chart>): Pattern => ({
  ...pattern,
  chart: { ...pattern.chart, ...change },
})

export function withRow(pattern: Pattern, index: number, change: Partial<Row>): Pattern {
  const row = pattern.chart.rows[index]
  if (!row)
    throw new RangeError(
      `There is no row ${index + 1}; the chart has ${pattern.chart.rows.length}.`,
    )
  return withChart(pattern, { rows: pattern.chart.rows.with(index, { ...row, ...change }) })
}

/** Change the cells of every row. */
export const withCells = (
  rows: readonly Row[],
  change: (cells: readonly string[], row: Row) => readonly string[],
): Row[] => rows.map((row) => ({ ...row, cells: change(row.cells, row) }))
