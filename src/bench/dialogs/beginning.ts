import type { Pattern } from '../../pattern/pattern'

/** The first rows of a piece, of no more cells than that; the piece itself where it has no more. */
export function beginningOf(pattern: Pattern, mostCells: number): Pattern {
  const { rows, bands, columns } = pattern.chart
  const most = Math.max(1, Math.floor(mostCells / columns))
  if (rows.length <= most) return pattern
  return {
    ...pattern,
    chart: {
      ...pattern.chart,
      rows: rows.slice(0, most),
      bands: bands.filter(({ to }) => to < most),
    },
  }
}
