import type { ChartDrawn } from '../languages/drawings'
import type { Work } from '../pattern/work'

/** What the title of a drawn chart tells of it. */
export const chartDrawn = ({ pattern, chart, layout }: Work): ChartDrawn => ({
  title: pattern.title,
  loom: pattern.loom,
  columns: chart.columns,
  rows: chart.rows.length,
  copies: chart.repeat ? layout.copies : null,
})
