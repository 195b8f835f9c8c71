import type { Spot } from '../../pattern/history'
import type { Pattern } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { termOf } from '../../languages/languages'

/** What a line of the chart is called on this loom: "round" on a ring, "row" on a rake. */
export const rowNoun = ({ loom }: Pick<Pattern, 'loom'>): 'round' | 'row' =>
  loom.shape === 'ring' ? 'round' : 'row'

/** "Round 7" for a whole round of a ring, "Row 7" else (common practice). `row` is 0-based. */
export function rowName({ pattern, numbers }: Work, row: number): string {
  const part = pattern.chart.rows[row]
  const round = pattern.loom.shape === 'ring' && part?.run === null && part.end === 'on'
  return `${round ? 'Round' : 'Row'} ${numbers[row] ?? row + 1}`
}

/** "round 7, peg 3: knit": what stands at a place, as it is said of a drawing that shows it. */
export function placeName(work: Work, { row, peg }: Spot): string {
  const { firstRuns, pattern } = work
  const site = firstRuns[row]?.row.sites.find(
    ({ peg: first, stitch }) => peg >= first && peg < first + stitch.width,
  )
  const stitch = site ? termOf(site.stitch, pattern.style.terms).name : 'not worked'
  return `${rowName(work, row).toLowerCase()}, peg ${peg + 1}: ${stitch}`
}
