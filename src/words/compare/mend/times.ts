import { readNumber, timesWords } from '../../read/lines/numberWords'
import type { ReadRow, Reading, TextRange } from '../../read/reading'
import type { Changes } from './rewrite'
import { timesInWords } from '../../../languages/english/forms'

/** The line that works a row again, as "Rep Rnds 1-2 three times more"; null: its own line does. */
export const repeatOf = ({ saidAt, range }: ReadRow): TextRange | null =>
  saidAt.from === range.from && saidAt.to === range.to ? null : saidAt

const spelt =
  /\b(once|twice|thrice)\b|\b(\d{1,5}|[a-z]+)(?= (?:more |further |additional |extra )?times?\b)|\bx (\d{1,5})\b/i
const untilRows = /\b(until|till)\b(.{0,40}?)\b(\d{1,5})(?= (?:rnds?|rounds?|rows?)\b)/i
const rowsInAll = /\b(\d{1,5})(?= (?:rnds?|rounds?|rows?)\b)/gi

/** How many rows a repeat has, and how many it is to have. */
export interface Repeated {
  /** Rows of one time. */
  readonly height: number
  /** Times in all as they are told, and as they should be. */
  readonly told: number
  readonly wanted: number
}

/**
 * The changes that make a repeat say another number of times, with the number of rows behind it, so
 * that nothing of the old ones is left. null: it says no number.
 */
export function withTimes(
  { text }: Reading,
  range: TextRange,
  { height, told, wanted }: Repeated,
): Changes | null {
  const said = text.slice(range.from, range.to)
  const counted = counting(said, wanted - told, height)
  if (counted === null) return null
  const now = counted.replaceAll(rowsInAll, (number) =>
    Number(number) === told * height ? String(wanted * height) : number,
  )
  return now === said ? null : [{ range, text: now }]
}

/** Numbers of rows that a stretch of the text says: "(18 rnds in all)", "until 23 rnds are worked". */
export const rowsSaid = (
  text: string,
  { from, to }: TextRange,
): { range: TextRange; count: number }[] =>
  [...text.slice(from, to).matchAll(rowsInAll)].map(({ 0: said, index }) => ({
    range: { from: from + index, to: from + index + said.length },
    count: Number(said),
  }))

/** The repeat with so many times more, or fewer; null: there is no number in it. */
function counting(said: string, more: number, height: number): string | null {
  const until = untilRows.exec(said)
  if (until) {
    const [whole, word = '', between = '', rows = ''] = until
    return said.replace(whole, `${word}${between}${Number(rows) + more * height}`)
  }
  const [whole = '', once, number, times] = spelt.exec(said) ?? []
  const value = once
    ? (timesWords.get(once.toLowerCase()) ?? 0)
    : times
      ? Number(times)
      : /^\d/.test(number ?? '')
        ? Number(number)
        : readNumber((number ?? '').toLowerCase())
  const now = value + more
  if (value < 1 || now < 1) return null
  if (once) return said.replace(whole, timesInWords(now))
  if (times) return said.replace(whole, `x ${now}`)
  const figure = /^\d/.test(number ?? '')
  // "one more time" is "two more times".
  return said.replace(
    new RegExp(String.raw`\b${whole}( (?:more |further |additional |extra )?)(times?)\b`),
    (_, between: string) =>
      between === ' ' && !figure
        ? timesInWords(now)
        : `${figure ? now : numberSaid(now)}${between}${now === 1 ? 'time' : 'times'}`,
  )
}

/** "two", "three"; "12" where the number has no word. */
const numberSaid = (number: number): string =>
  ['one', 'two'][number - 1] ?? timesInWords(number).split(' ')[0] ?? ''
