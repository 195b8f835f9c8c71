import { withChart } from './chart'
import { chartOn } from '../charts'
import type { Sheet } from '../pattern'

/** The first rows of a piece, of no more cells than that; the piece itself where it has no more. */
export function beginningOf(pattern: Sheet, mostCells: number): Sheet {
  const { rows, bands, columns } = chartOn(pattern)
  const most = Math.max(1, Math.floor(mostCells / columns))
  if (rows.length <= most) return pattern
  return withChart(pattern, {
    rows: rows.slice(0, most),
    bands: bands.filter(({ to }) => to < most),
  })
}
