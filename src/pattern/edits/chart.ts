import { chartOn, namedOn } from '../charts'
import type { Chart, NamedChart, Row, Sheet, Cell } from '../pattern'

type Charts = Sheet['charts']

/** Every chart of a pattern changed; those that are given back as they were stay the same objects. */
export const eachChart = (charts: Charts, change: (chart: NamedChart) => NamedChart): Charts =>
  charts.map(change) as unknown as Charts

/**
 * Shared ground of the edits: replace what is said of the chart worked on, and keep all else by identity. Rows put in
 * the place of those of a wish are the designer's own.
 */
export function withNamed(sheet: Sheet, change: Partial<NamedChart>): Sheet {
  const on = namedOn(sheet)
  const own = change.chart && { wish: null }
  return {
    ...sheet,
    charts: eachChart(sheet.charts, (chart) =>
      chart === on ? { ...chart, ...own, ...change } : chart,
    ),
  }
}

/** Replace parts of the chart itself. */
export const withChart = (sheet: Sheet, change: Partial<Chart>): Sheet =>
  withNamed(sheet, { chart: { ...chartOn(sheet), ...change } })

export function withRow(sheet: Sheet, index: number, change: Partial<Row>): Sheet {
  const { rows } = chartOn(sheet)
  const row = rows[index]
  if (!row) throw new RangeError(`There is no row ${index + 1}; the chart has ${rows.length}.`)
  return withChart(sheet, { rows: rows.with(index, { ...row, ...change }) })
}

/** The charts changed alike; all are rows of the designer's then. */
export const withAllCharts = (sheet: Sheet, change: (chart: Chart) => Chart): Sheet => ({
  ...sheet,
  charts: eachChart(sheet.charts, (named) => ({
    ...named,
    chart: change(named.chart),
    wish: null,
  })),
})

/** Change the cells of every row. */
export const withCells = (
  rows: readonly Row[],
  change: (cells: readonly Cell[], row: Row) => readonly Cell[],
): Row[] => rows.map((row) => ({ ...row, cells: change(row.cells, row) }))
