import { termOf } from '../../languages/languages'
import type { Term } from '../../languages/terms'
import { placedAt } from '../../pattern/row'
import { rowNoun } from '../../words/rowName'
import { columnAt } from '../commands/chart'
import type { Bench } from '../state/bench.svelte'

/** The term of the stitch that is worked at the place; null: the row does not work that peg, or nothing stands there. */
export function stitchAtPlace(bench: Bench): Term | null {
  const { spot, chart, pattern } = bench
  const row = chart.rows[spot.row]
  if (!row || (row.run && (spot.peg < row.run.from || spot.peg > row.run.to))) return null
  const item = placedAt(row, columnAt(bench))
  return item ? termOf(item.stitch, pattern.style.terms) : null
}

/** "not worked in this round". */
export const notWorked = ({ pattern }: Bench): string => `not worked in this ${rowNoun(pattern)}`
