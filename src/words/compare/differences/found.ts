import { memo } from '../../../pattern/memo'
import type { Run } from '../../../pattern/pattern'
import type { TextRange } from '../../read/reading'
import type { RowPair } from '../comparison'
import type { Item } from '../within/hunks'
import type { Mismatch, Differing } from '../within/row'

/** A row of the words with one working of its chart row. */
export interface Pairing {
  readonly read: number
  readonly pass: number
}

/** What one row says otherwise than the chart. */
export interface Mismatched {
  readonly mismatch: Mismatch
  readonly at: Pairing
  readonly chartRow: number
}

/** Rows that only one side has. */
export interface Alone {
  readonly run: Run
  /** The last row before them on the other side. */
  readonly after: number | null
  /** Which rows they are: those of a band and of a repeat come again. */
  readonly rows: string
}

const rangeKey = ({ from, to }: TextRange): string => `${from}-${to}`

/** The same piece of text, and the same place of the same chart row, tell one thing. */
export function keysOfMismatch({ mismatch, chartRow }: Mismatched): readonly string[] {
  const said =
    mismatch.kind === 'path'
      ? JSON.stringify([mismatch.words, mismatch.chart])
      : placesKey(mismatch.places)
  return [`text ${rangeKey(mismatch.range)} ${said}`, `chart ${chartRow} ${said}`]
}

/** The same of a mismatch's places, in peg order, whichever way the row was worked. */
const placesKey = memo((places: readonly Differing[]): string =>
  places
    .map(({ words, chart, pegs }) => `${rangeKey(pegs)}${inPegOrder(words)}>${inPegOrder(chart)}`)
    .sort()
    .join(' '),
)

const inPegOrder = (items: readonly Item[]): string =>
  items
    .toSorted((a, b) => a.peg - b.peg)
    .map(({ letter }) => letter)
    .join('')

export const indexesOf = ({ from, to }: Run): number[] =>
  Array.from({ length: to - from + 1 }, (_, n) => from + n)

/** Runs of rows that stand alone on one side. `after`: the last row before them on the other. */
export function aloneRuns(
  pairs: readonly RowPair[],
  side: 'read' | 'pass',
): { run: Run; after: number | null }[] {
  const other = side === 'read' ? 'pass' : 'read'
  const runs: { run: Run; after: number | null }[] = []
  let after: number | null = null
  let open = false
  for (const pair of pairs) {
    const mine = pair[side]
    const theirs = pair[other]
    if (mine !== null && theirs === null) {
      const last = runs.at(-1)
      if (open && last) runs[runs.length - 1] = { ...last, run: { ...last.run, to: mine } }
      else runs.push({ run: { from: mine, to: mine }, after })
      open = true
    } else {
      open = false
      after = theirs ?? after
    }
  }
  return runs
}
