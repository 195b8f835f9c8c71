import { counted, listed, numbered } from '../../../languages/english/forms'
import { termOf } from '../../../languages/languages'
import type { Area, At } from '../../../pattern/blocks/area'
import { rowName, rowNoun } from '../../../words/rowName'
import type { Bench } from '../../state/bench.svelte'

/** More than these are counted, not named. */
const mostNamed = 2

/** "Would cut 2/2 LC, round 11": what is said before it is done. */
export function wouldCut({ pattern, work }: Bench, torn: readonly At[]): string {
  if (torn.length > mostNamed) {
    const rows = new Set(torn.map(({ row }) => row)).size
    return `Would cut ${torn.length} crosses in ${counted(rows, rowNoun(pattern))}`
  }
  const names = torn.map(
    ({ stitch, row }) =>
      `${termOf(stitch, pattern.style.terms).abbr}, ${rowName(work, row).toLowerCase()}`,
  )
  return `Would cut ${listed(names)}`
}

/** "4 pegs × 4 rounds" */
export const sizeSaid = ({ pattern }: Bench, columns: number, rows: number): string =>
  `${counted(columns, 'peg')} × ${counted(rows, rowNoun(pattern))}`

export const areaSize = (bench: Bench, { rows, columns }: Area): string =>
  sizeSaid(bench, columns.to - columns.from + 1, rows.to - rows.from + 1)

/** "rounds 5-8, pegs 3-6": as they are numbered. */
export function areaSaid({ pattern, work }: Bench, { rows, columns }: Area): string {
  const { numbers, layout } = work
  const peg = (column: number) => layout.columnOf.indexOf(column)
  const [first, last] = [peg(columns.from), peg(columns.to)]
  const named = numbered(
    rowNoun(pattern),
    numbers[rows.from] ?? rows.from + 1,
    numbers[rows.to] ?? rows.to + 1,
  )
  return first < 0 || last < 0 ? named : `${named}, ${numbered('peg', first + 1, last + 1)}`
}
