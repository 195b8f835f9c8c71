import type { Run } from '../../../pattern/pattern'
import type { TextRange } from '../../read/reading'
import type { RowPair } from '../comparison'
import type { Item } from '../within/hunks'
import type { Mismatch, Place } from '../within/row'

/** A row of the words with one working of its chart row. */
export interface Pairing {
  readonly read: number
  readonly pass: number
}

/** The same thing said of one or several rows, before it has its words. */
export type Found =
  | { readonly what: 'mismatch'; readonly mismatch: Mismatch; readonly at: Pairing[] }
  | { readonly what: 'not in words'; readonly passes: Run[]; readonly after: (number | null)[] }
  | { readonly what: 'not in chart'; readonly reads: Run[]; readonly after: (number | null)[] }

const rangeKey = ({ from, to }: TextRange): string => `${from}-${to}`

/** Two keys: the same piece of text, and the same place of the same chart row, tell one thing. */
function keysOf(mismatch: Mismatch, chartRow: number): readonly [text: string, chart: string] {
  const said =
    mismatch.kind === 'path'
      ? JSON.stringify([mismatch.words, mismatch.chart])
      : mismatch.places.map(placeKey).sort().join(' ')
  return [`text ${rangeKey(mismatch.range)} ${said}`, `chart ${chartRow} ${said}`]
}

/** In peg order, whichever way the row was worked. */
const placeKey = ({ words, chart, pegs }: Place): string => {
  const letters = (items: readonly Item[]) =>
    items
      .toSorted((a, b) => a.peg - b.peg)
      .map(({ letter }) => letter)
      .join('')
  return `${rangeKey(pegs)}${letters(words)}>${letters(chart)}`
}

/** Add to what was found of the same, or begin anew. */
export class Finds {
  readonly #all = new Set<Found>()
  readonly #byKey = new Map<string, Found>()

  get all(): Found[] {
    return [...this.#all]
  }

  mismatch(mismatch: Mismatch, at: Pairing, chartRow: number): void {
    const keys = keysOf(mismatch, chartRow)
    const [first, second] = keys.map((key) => this.#byKey.get(key))
    let found = first ?? second
    if (found?.what !== 'mismatch') this.#all.add((found = { what: 'mismatch', mismatch, at: [] }))
    found.at.push(at)
    if (first?.what === 'mismatch' && second?.what === 'mismatch' && first !== second) {
      first.at.push(...second.at)
      this.#all.delete(second)
      for (const [key, other] of this.#byKey) if (other === second) this.#byKey.set(key, first)
    }
    for (const key of keys) this.#byKey.set(key, found)
  }

  missing(key: string, passes: Run, after: number | null): void {
    const known = this.#byKey.get(`words ${key}`)
    if (known?.what === 'not in words') {
      known.passes.push(passes)
      known.after.push(after)
    } else this.#begin(`words ${key}`, { what: 'not in words', passes: [passes], after: [after] })
  }

  extra(key: string, reads: Run, after: number | null): void {
    const known = this.#byKey.get(`chart ${key}`)
    if (known?.what === 'not in chart') {
      known.reads.push(reads)
      known.after.push(after)
    } else this.#begin(`chart ${key}`, { what: 'not in chart', reads: [reads], after: [after] })
  }

  #begin(key: string, found: Found): void {
    this.#byKey.set(key, found)
    this.#all.add(found)
  }
}

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
