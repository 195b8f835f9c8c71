import type { Spot } from '../pattern/history'
import type { Pattern } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import { termOf } from '../languages/languages'
import { upperFirst } from '../languages/english/forms'
import { unitOfRow } from '../pattern/unit'

/** What a line of the chart is called on this loom: "round" on a ring, "row" on a rake. */
export const rowNoun = ({ loom }: Pick<Pattern, 'loom'>): 'round' | 'row' =>
  loom.shape === 'ring' ? 'round' : 'row'

/** "Round 7", "Row 7", as the words call it. `row` is 0-based. */
export function rowName({ pattern, firstRuns, numbers }: Work, row: number): string {
  const run = firstRuns[row]
  const unit = run ? unitOfRow(run, pattern.loom.shape) : 'row'
  return `${upperFirst(unit)} ${numbers[row] ?? row + 1}`
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
