import { ordinal } from '../../../languages/english/forms'
import type { Run } from '../../../pattern/pattern'
import { readHead } from '../../read/lines/heads'
import type { ReadRow, Reading, TextRange, Token } from '../../read/reading'
import type { Comparison } from '../comparison'
import type { Changes } from './rewrite'
import type { Both } from '../differences/setting'

/** What becomes of the numbers of the rows after a place where the words leave rows out. */
export interface Renumbering {
  /** The rows' new numbers, which are those of the chart. */
  readonly numbers: ReadonlyMap<ReadRow, number>
  /** Heads and references with their new numbers, beside other changes; null: it cannot be done. */
  readonly renumber: (changes: Changes) => Changes | null
  /** Does the chart agree with all those numbers now? */
  readonly agrees: (before: Comparison, after: Comparison) => boolean
}

/**
 * Words that leave a row out and are numbered without it have too low a number on every row after
 * it, as far as their numbers run on. `agree`: no number is wrong. `own`: they are numbered in a
 * way of their own, so that the chart's numbers would not make them right.
 */
export function renumberingAfter(
  both: Both,
  missing: Run,
  after: number | null,
): Renumbering | 'agree' | 'own' {
  const { rows, text } = both.reading
  const at = after ?? -1
  const label = (index: number): number => Number(rows[index]?.label)
  let end = at + 1
  while (end < rows.length && (end === 0 || label(end) > label(end - 1))) end++
  const shift = (index: number): number => {
    const pass = both.passOf.get(index)
    return pass === undefined ? NaN : both.number(pass) - label(index)
  }
  const following = Array.from({ length: end - at - 1 }, (_, n) => at + 1 + n)
  if (following.every((index) => shift(index) === 0)) return 'agree'
  for (let index = at; index >= 0; index--) {
    if (shift(index) !== 0) return 'own'
    if (!(label(index) > label(index - 1))) break
  }
  const size = missing.to - missing.from + 1
  let last = size
  for (const index of following) {
    // Where more rows are left out further on, the numbers are too low by more.
    if (!(shift(index) >= last) || (index === at + 1 && shift(index) !== size)) return 'own'
    last = shift(index)
  }
  const from = at < 0 ? 0 : (rows[at]?.saidAt.to ?? 0)
  const to = rows[end]?.saidAt.from ?? text.length
  const first = at < 0 ? 0 : label(at)
  const numberOf = (old: number): number => {
    if (old <= first) return old
    const index = following.findLast((one) => label(one) <= old)
    return old + (index === undefined ? size : shift(index))
  }
  const numbers = new Map(
    following.map((index) => [rows[index] as ReadRow, numberOf(label(index))] as const),
  )
  return {
    numbers,
    renumber: (changes) => withNumbers(both.reading, { from, to }, numberOf, changes),
    agrees: (was, now) => mislabelled(now) <= mislabelled(was) - following.length,
  }
}

/** Rows that go by another number in the words than in the chart. */
function mislabelled({ reading, work, pairs }: Comparison): number {
  let count = 0
  for (const { read, pass } of pairs)
    if (read !== null && pass !== null)
      if (Number(reading.rows[read]?.label) !== work.passes[pass]?.number) count++
  return count
}

/** Heads that count, or name every other row: other numbers would change what they say. */
const unnumbered = /^\s*(?:next)\b/i
const alternating = /\b(?:alt|alternate|even|odd|other|every|all)\b/i

/** Where a number stands in a reference: an end of "6-11", or by itself. */
export type Position = 'first' | 'last' | 'alone'
type NumberOf = (old: number, at: Position) => number

/**
 * Heads and references in a stretch of the text with other numbers, beside other changes. `numberOf`
 * may depend on where the number stands; NaN: it has no other. null: it cannot be done.
 */
export function withNumbers(
  { text, tokens }: Reading,
  { from, to }: TextRange,
  numberOf: NumberOf,
  changes: Changes,
): Changes | null {
  const list = [...changes]
  const taken = (range: TextRange): boolean =>
    changes.some((one) => one.range.from < range.to && one.range.to > range.from)
  const put = (range: TextRange, said: string): void => {
    if (said !== text.slice(range.from, range.to)) list.push({ range, text: said })
  }
  for (const [index, { kind, range }] of tokens.entries()) {
    if (range.from < from || range.to > to || taken(range)) continue
    const said = text.slice(range.from, range.to)
    if (kind === 'head' && /\d/.test(said) && !unnumbered.test(said)) {
      if (alternating.test(said) || breaksRange(said, numberOf)) return null
      put(
        range,
        said.replaceAll(figure, (one) => renumbered(one, numberOf, 'alone')),
      )
    } else if (kind === 'row' && /^\d/.test(said)) {
      const at = positionOf(text, tokens[index - 1], tokens[index + 1])
      if (Number.isNaN(numberOf(parseInt(said, 10), at))) return null
      put(range, renumbered(said, numberOf, at))
    }
  }
  return list.sort((a, b) => a.range.from - b.range.from || a.range.to - b.range.to)
}

const dash = /^(?:-|–|—|to|through|thru)$/i

/** By the tokens before and after a number. */
function positionOf(text: string, before: Token | undefined, after: Token | undefined): Position {
  const isDash = (token: Token | undefined): boolean =>
    token !== undefined && dash.test(text.slice(token.range.from, token.range.to))
  return isDash(before) ? 'last' : isDash(after) ? 'first' : 'alone'
}

const figure = /\d{1,5}(?:st|nd|rd|th)?\b/gi
const isOrdinal = (said: string): boolean => /\d(?:st|nd|rd|th)$/i.test(said)

/** "5-8" has to stay as long as it was. */
function breaksRange(head: string, numberOf: NumberOf): boolean {
  const numbers = readHead(head)?.numbers ?? []
  const [first = 0] = numbers
  const last = numbers.at(-1) ?? first
  return numberOf(last, 'alone') - numberOf(first, 'alone') !== last - first
}

function renumbered(said: string, numberOf: NumberOf, at: Position): string {
  const number = numberOf(parseInt(said, 10), at)
  return isOrdinal(said) ? ordinal(number) : String(number)
}
