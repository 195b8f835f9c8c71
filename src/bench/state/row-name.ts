import type { Spot } from '../../pattern/history'
import type { Work } from '../../pattern/work'

/** "Round 7" for a whole round of a ring, "Row 7" else (common practice). `row` is 0-based. */
export function rowName({ pattern, numbers }: Work, row: number): string {
  const part = pattern.chart.rows[row]
  const round = pattern.loom.shape === 'ring' && part?.run === null && part.end === 'on'
  return `${round ? 'Round' : 'Row'} ${numbers[row] ?? row + 1}`
}

/** "row 7, peg 3: knit": what stands at a place, as it is said of a drawing that shows it. */
export function placeName({ firstRuns, numbers, pattern }: Work, { row, peg }: Spot): string {
  const site = firstRuns[row]?.row.sites.find(
    ({ peg: first, stitch }) => peg >= first && peg < first + stitch.width,
  )
  const stitch = site?.stitch[pattern.style.terms].name ?? 'not worked'
  return `row ${numbers[row]}, peg ${peg + 1}: ${stitch}`
}
