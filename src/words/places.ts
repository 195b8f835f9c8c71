import type { Heading } from '../loom/direction'
import type { Spot } from '../pattern/history'
import type { Run } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import type { RowPair } from './compare/comparison'
import type { ReadRow, Reading, TextRange } from './read/reading'

/** Which row of a reading is which row of the chart. */
export class Rows {
  readonly #chart = new Map<number, number>()
  readonly #read = new Map<number, number>()

  constructor(work: Work, pairs: readonly RowPair[]) {
    for (const { read, pass } of pairs) {
      const row = pass === null ? undefined : work.passes[pass]?.row
      if (row === undefined || read === null) continue
      this.#chart.set(read, row)
      if (!this.#read.has(row)) this.#read.set(row, read)
    }
  }

  /** The chart row that a row of the words tells. */
  chartRow(read: number): number | null {
    return this.#chart.get(read) ?? null
  }

  /** Where the words tell a chart row first: index into `Reading.rows`. */
  readRow(row: number): number | null {
    return this.#read.get(row) ?? null
  }
}

/** Words written from the chart tell its workings one by one. */
export const inOrder = ({ rows }: Reading, { passes }: Work): RowPair[] =>
  rows.length === passes.length ? passes.map((_, index) => ({ read: index, pass: index })) : []

const holds = ({ from, to }: TextRange, at: number): boolean => from <= at && at <= to

interface OnPegs {
  readonly range: TextRange
  readonly pegs: Run
}

/**
 * The stitches of a row of the words on the pegs of its chart row, in working order. They go where
 * the chart has as many, with or without the pegs that have no stitch; else side by side.
 */
function onPegs(read: ReadRow, work: Work, row: number): OnPegs[] {
  const run = work.firstRuns[row]
  if (!run) return []
  const heading: Heading = read.heading ?? run.heading
  const sites = heading === 'forward' ? run.row.sites : run.row.sites.toReversed()
  const worked = sites.filter(({ stitch: { takes, makes } }) => takes + makes > 0)
  const { length } = read.stitches
  const chart = [sites, worked].find((list) => list.length === length)
  const { from, to } = read.run ?? run.row
  let next = heading === 'forward' ? from : to + 1
  return read.stitches.map(({ stitch: { width }, range }, index) => {
    const site = chart?.[index]
    if (site) return { range, pegs: { from: site.peg, to: site.peg + site.stitch.width - 1 } }
    if (heading === 'back') next -= width
    const first = next
    if (heading === 'forward') next += width
    return { range, pegs: { from: first, to: first + Math.max(1, width) - 1 } }
  })
}

/**
 * The place on the chart that the words at `at` tell of; null: they tell of none. Where they tell
 * of several places and the present one is among them, it stays.
 */
export function spotAt(
  reading: Reading,
  rows: Rows,
  work: Work,
  at: number,
  present: Spot,
): Spot | null {
  let found: { read: ReadRow; row: number } | null = null
  for (const [index, read] of reading.rows.entries()) {
    const row = holds(read.saidAt, at) ? rows.chartRow(index) : null
    if (row === null) continue
    if (!found || row === present.row) found = { read, row }
    if (row === present.row) break
  }
  if (!found) return null
  const { read, row } = found
  if (!holds(read.range, at)) return { row, peg: present.peg }
  const all = onPegs(read, work, row)
  // Between two stitches the caret stands before the second one.
  const inside = all.filter(({ range }) => range.from <= at && at < range.to)
  const here = inside.length > 0 ? inside : all.filter(({ range }) => range.to === at)
  const same = here.some(({ pegs }) => pegs.from <= present.peg && present.peg <= pegs.to)
  const [first] = here
  return { row, peg: first && !same ? first.pegs.from : present.peg }
}

/** What of the text is lit for a place of the chart. */
export interface Lit {
  readonly line: TextRange
  /** The words of the stitch on its peg, where they stand in that line. */
  readonly stitch: TextRange | null
}

export function litAt(reading: Reading, rows: Rows, work: Work, { row, peg }: Spot): Lit | null {
  const index = rows.readRow(row)
  const read = index === null ? undefined : reading.rows[index]
  if (!read) return null
  const line = read.saidAt
  if (read.range.from !== line.from) return { line, stitch: null }
  const found = onPegs(read, work, row).find(({ pegs }) => pegs.from <= peg && peg <= pegs.to)
  return { line, stitch: found?.range ?? null }
}
