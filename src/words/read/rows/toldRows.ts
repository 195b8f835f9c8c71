import type { Named } from '../nodes'
import type { Words } from './rows'

/** One line of rows that has been told, for references to it. */
export interface ToldLine {
  readonly number: number
  readonly words: Words
  /** First of its rows, and the one after the last. */
  readonly from: number
  readonly to: number
}

/** The rows that have been told, by number and in their order. */
export class ToldRows {
  readonly #all: ToldLine[] = []
  readonly #byNumber = new Map<number, ToldLine>()
  /** The first of those that "these rows" means. */
  #these = 0

  add(told: ToldLine): void {
    this.#all.push(told)
    this.#byNumber.set(told.number, told)
  }

  /** "These rows" are those that are told from here on. */
  beginThese(): void {
    this.#these = this.#all.length
  }

  /** The row that the nth one to be worked goes by. */
  nth(named: Named, index: number): ToldLine | undefined {
    if (named.kind === 'numbers')
      return this.#byNumber.get(named.numbers[index % named.numbers.length] ?? 0)
    return this.#all.at(named.kind === 'last' ? -named.rows : -1)
  }

  /** All rows that are named; null: some are not told. */
  all(named: Named): readonly ToldLine[] | null {
    if (named.kind === 'last') return this.#all.slice(-named.rows)
    if (named.kind === 'these') return this.#all.slice(this.#these)
    const list = named.numbers.flatMap((number) => this.#byNumber.get(number) ?? [])
    return list.length === named.numbers.length ? list : null
  }

  /** Numbers that are named, and not told. */
  lacking(named: Named): readonly number[] {
    return named.kind === 'numbers'
      ? named.numbers.filter((number) => !this.#byNumber.has(number))
      : []
  }
}
