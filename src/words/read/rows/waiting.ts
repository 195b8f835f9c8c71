import { readLimits } from '../limits'
import type { Head } from '../nodes'

/** One row of a head that names several. `index`: which of the rows of its head it is. */
export interface Numbered<W> {
  readonly number: number
  readonly words: W
  readonly index: number
}

/**
 * Numbered rows as they are told, until they can be put in order: "Rows 1, 3, 5" and "Row 2 and
 * all even rows" wait for the rows between.
 */
export class Waiting<W> {
  #rows: { number: number; words: W }[] = []
  #every: { from: number; words: W }[] = []
  #interleaved = false

  /** Must the rows that wait be worked before these are added? */
  comesBetween({ numbers, every }: Head): boolean {
    if (this.#rows.length === 0) return false
    const waits = new Set(this.#rows.map(({ number }) => number))
    const most = this.#rows.at(-1)?.number ?? 0
    const inOrder = hasGaps(numbers, every) || this.#interleaved
    return numbers.some((n) => waits.has(n)) || ((numbers[0] ?? 0) < most && !inOrder)
  }

  /** True when rows wait for others: they are worked at once otherwise. */
  add(words: W, { numbers, every }: Head): boolean {
    if (hasGaps(numbers, every)) this.#interleaved = true
    if (every > 0) this.#every.push({ from: numbers[0] ?? 1, words })
    for (const number of numbers) this.#rows.push({ number, words })
    return this.#interleaved
  }

  /** All rows that wait, in the order they are worked. `upTo`: the last number that is named. */
  take(upTo: number | null): Numbered<W>[] {
    const rows = this.#rows
    const known = new Map(rows.map((one) => [one.number, one]))
    let last = rows.reduce((most, { number }) => Math.max(most, number), 0)
    if (upTo !== null) last = Math.max(last, Math.min(upTo, last + 1))
    for (const { from, words } of this.#every) {
      // Even rows go on behind the last odd one, which they belong to.
      const end = upTo === null && from % 2 === 0 ? last + 1 : last
      for (let number = from; number <= end && known.size < readLimits.rows; number += 2)
        if (!known.has(number)) known.set(number, { number, words })
    }
    const sorted = this.#interleaved
      ? [...known.values()].sort((a, b) => a.number - b.number)
      : rows
    this.#rows = []
    this.#every = []
    this.#interleaved = false
    const counts = new Map<W, number>()
    return sorted.map(({ number, words }) => {
      const index = counts.get(words) ?? 0
      counts.set(words, index + 1)
      return { number, words, index }
    })
  }
}

const hasGaps = (numbers: readonly number[], every: number): boolean =>
  every > 0 || numbers.some((n, i) => i > 0 && n !== (numbers[i - 1] ?? 0) + 1)
