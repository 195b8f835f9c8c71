import { numberIn, readLimits } from '../limits'
import { isOrdinalWord, readNumber } from './numberWords'

/** A word, a number or a sign of the text. Offsets count from the start of what is lexed. */
export interface Lexeme {
  readonly kind: 'word' | 'number' | 'sign'
  /** Lower case; of a list of sizes the chosen number. */
  readonly text: string
  /** Of a number, a number word or an ordinal; otherwise -1. */
  readonly value: number
  readonly from: number
  readonly to: number
  /** Stands right behind the piece before it, with no space. */
  readonly glued: boolean
  /** How many numbers a list of sizes has; 1 for a plain number. */
  readonly sizes: number
  /** "1st", "2nd" */
  readonly ordinal: boolean
}

/** Same signs, differently typed. */
const signs: ReadonlyMap<string, string> = new Map([
  ['–', '-'],
  ['—', '-'],
  ['−', '-'],
  ['×', 'x'],
  ['″', '"'],
  ['”', '"'],
  ['“', '"'],
  ['’', "'"],
])

const isDigit = (code: number): boolean => code >= 48 && code <= 57
const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  (code >= 0xc0 && code <= 0x24f && code !== 0xd7)
const isSpace = (code: number): boolean =>
  code === 32 || (code >= 9 && code <= 13) || code === 0xa0 || (code >= 0x2000 && code <= 0x200b)

const ordinalEnds = new Set(['st', 'nd', 'rd', 'th'])

/** Parts a text into words, numbers and signs; lists of sizes become the number of that size. */
export function lex(text: string, size: number): Lexeme[] {
  const pieces: Lexeme[] = []
  const lower = text.toLowerCase()
  // Lower case of a few letters is longer: then offsets would no longer agree.
  const small = lower.length === text.length ? lower : text
  let listed = false
  /** Commas behind numbers. */
  let manyCommas = 0
  let end = -1
  for (let at = 0; at < text.length;) {
    const code = text.charCodeAt(at)
    if (isSpace(code)) {
      at++
      continue
    }
    const from = at
    const glued = from === end
    let piece: Lexeme
    if (isDigit(code)) {
      while (at < text.length && isDigit(text.charCodeAt(at))) at++
      const value = numberIn(text.slice(from, at))
      const ordinal = ordinalEnds.has(small.slice(at, at + 2)) && !isLetter(text.charCodeAt(at + 2))
      if (ordinal) at += 2
      piece = { kind: 'number', text: String(value), value, from, to: at, glued, sizes: 1, ordinal }
    } else if (isLetter(code)) {
      while (at < text.length && isLetter(text.charCodeAt(at))) at++
      const word = small.slice(from, at)
      const value = readNumber(word)
      const ordinal = value > 0 && isOrdinalWord(word)
      piece = { kind: 'word', text: word, value, from, to: at, glued, sizes: 1, ordinal }
    } else {
      while (code === 42 && text.charCodeAt(at + 1) === 42) at++
      at++
      const sign = text.slice(from, at)
      const plain = signs.get(sign) ?? sign
      if (sign === ',' && (pieces.at(-1)?.value ?? -1) >= 0) manyCommas++
      if (sign === '(' || sign === '[') listed ||= (pieces.at(-1)?.value ?? -1) >= 0
      const kind = plain === 'x' ? 'word' : 'sign'
      piece = { kind, text: plain, value: -1, from, to: at, glued, sizes: 1, ordinal: false }
    }
    pieces.push(piece)
    end = at
  }
  const read = listed ? fold(pieces, size, bracketedAt) : pieces
  return manyCommas > 1 ? fold(read, size, bareAt) : read
}

/** Brackets by what opens them. */
export const closing: ReadonlyMap<string, string> = new Map([
  ['(', ')'],
  ['[', ']'],
  ['{', '}'],
])
const between = new Set([',', '-', ':', '/'])

/** Sizes stand in round or square brackets. */
const sizesClose = (open: Lexeme | undefined): string | undefined =>
  open?.text === '{' ? undefined : closing.get(open?.text ?? '')

/** A list of sizes that begins at a piece, up to the one at `end`. */
interface SizeList {
  readonly values: readonly number[]
  readonly end: number
}

/** Lists of sizes become the number of the size that is read. */
function fold(
  pieces: readonly Lexeme[],
  size: number,
  listAt: (pieces: readonly Lexeme[], at: number) => SizeList | null,
): Lexeme[] {
  const folded: Lexeme[] = []
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Lexeme
    const list = listAt(pieces, at)
    if (!list) {
      folded.push(piece)
      continue
    }
    const { values, end } = list
    const value = values[Math.min(size, values.length - 1)] ?? piece.value
    // "five(5)" says one number twice.
    const twice = values.length === 2 && piece.kind === 'word' && values[0] === values[1]
    const sizes = twice ? 1 : values.length
    const { to } = pieces[end] as Lexeme
    folded.push({ ...piece, kind: 'number', text: String(value), value, to, sizes })
    at = end
  }
  return folded
}

/** "24 (28, 32)", "24 (28-32)", "6(8:12)", "24 [28, 32]" */
function bracketedAt(pieces: readonly Lexeme[], at: number): SizeList | null {
  const piece = pieces[at] as Lexeme
  const open = pieces[at + 1]
  const close = piece.kind === 'number' || piece.value > 0 ? sizesClose(open) : undefined
  const list = close ? sizesIn(pieces, at + 2, close) : null
  if (!list || (open?.text !== '(' && list.values.length < 2)) return null
  return { values: [piece.value, ...list.values], end: list.end }
}

const loopWords = new Set(['st', 'sts', 'stitch', 'stitches', 'loops', 'pegs'])
/** Fewer numbers with commas between are no list of sizes for certain. */
const leastBare = 3

/** "knit 24, 28, 32 sts": three or more numbers that do not fall, and then what is counted. */
function bareAt(pieces: readonly Lexeme[], at: number): SizeList | null {
  const end = bareEnd(pieces, at)
  if (end < at + 2 * (leastBare - 1)) return null
  const numbers = pieces.slice(at, end + 1).filter((_, n) => n % 2 === 0)
  return { values: numbers.map(({ value }) => value), end }
}

/** Where a list without brackets that begins at a piece ends; -1 if none does. */
function bareEnd(pieces: readonly Lexeme[], start: number): number {
  const first = pieces[start] as Lexeme
  const before = pieces[start - 1]
  // Behind its stitch ("k2, 4, 6 sts") a number can be its own; pegs and rows are numbered.
  if (first.kind !== 'number' || first.sizes > 1 || (first.glued && before?.kind !== 'sign'))
    return -1
  if (before && /^(?:pegs?|rows?|rnds?|rounds?)$/.test(before.text)) return -1
  let end = start
  for (let at = start + 2; at < pieces.length && at < start + 2 * readLimits.sizes; at += 2) {
    const number = pieces[at] as Lexeme
    if (pieces[at - 1]?.text !== ',' || number.kind !== 'number') break
    if (number.value < (pieces[at - 2] as Lexeme).value) return -1
    end = at
  }
  return loopWords.has(pieces[end + 1]?.text ?? '') ? end : -1
}

/** More numbers in brackets than there are sizes are something else. */
function sizesIn(pieces: readonly Lexeme[], start: number, close: string): SizeList | null {
  const values: number[] = []
  for (let at = start; at < pieces.length && values.length <= readLimits.sizes; at++) {
    const piece = pieces[at] as Lexeme
    if (piece.kind === 'number' && !piece.ordinal) values.push(piece.value)
    else if (piece.text === close && values.length > 0)
      return values.length < readLimits.sizes ? { values, end: at } : null
    else if (!between.has(piece.text)) return null
  }
  return null
}
