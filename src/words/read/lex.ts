import { readNumber } from './numberWords'

/** A word, a number or a sign of the text. Offsets count from the start of what is lexed. */
export interface Piece {
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

const pattern = /([a-zà-ÿ]+)|(\d+)(st|nd|rd|th)?(?![a-z\d])|(\d+)|(\*+)|(\S)/gi

/** Same signs, differently typed. */
const signs: Readonly<Record<string, string>> = {
  '–': '-',
  '—': '-',
  '−': '-',
  '×': 'x',
  '″': '"',
  '”': '"',
  '“': '"',
  '’': "'",
}

/** Parts a text into words, numbers and signs; lists of sizes become the number of that size. */
export function lex(text: string, size: number): Piece[] {
  const pieces: Piece[] = []
  let end = -1
  for (const match of text.matchAll(pattern)) {
    const [whole, word, number, ordinal, digits, stars] = match
    const from = match.index
    const to = from + whole.length
    const glued = from === end
    end = to
    const figures = number ?? digits
    if (figures !== undefined) {
      const value = Number(figures.slice(0, 9))
      const piece = { kind: 'number' as const, text: String(value), value, from, to, glued }
      pieces.push({ ...piece, sizes: 1, ordinal: ordinal !== undefined })
      continue
    }
    const lower = word ? word.toLowerCase() : (stars ?? signs[whole] ?? whole)
    pieces.push({
      kind: word || lower === 'x' ? 'word' : 'sign',
      text: lower,
      value: word ? readNumber(lower) : -1,
      from,
      to,
      glued,
      sizes: 1,
      ordinal: word !== undefined && lower.endsWith('th') && readNumber(lower) > 0,
    })
  }
  return foldSizes(pieces, size)
}

const closing: Readonly<Record<string, string>> = { '(': ')', '[': ']' }
const between = new Set([',', '-', ':', '/'])

/** "24 (28, 32)", "24 (28-32)", "6(8:12)", "24 [28, 32]": the number of the size that is read. */
function foldSizes(pieces: readonly Piece[], size: number): Piece[] {
  const folded: Piece[] = []
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Piece
    const open = pieces[at + 1]
    const close = piece.kind === 'number' || piece.value > 0 ? closing[open?.text ?? ''] : undefined
    const list = close ? sizesIn(pieces, at + 2, close) : null
    const listed = list && (open?.text === '(' || list.values.length > 1)
    if (!list || !listed) {
      folded.push(piece)
      continue
    }
    const values = [piece.value, ...list.values]
    // "five(5)" says one number twice.
    const twice = values.length === 2 && piece.kind === 'word' && values[0] === values[1]
    const value = values[Math.min(size, values.length - 1)] ?? piece.value
    folded.push({
      ...piece,
      kind: 'number',
      text: String(value),
      value,
      to: (pieces[list.end] as Piece).to,
      sizes: twice ? 1 : values.length,
    })
    at = list.end
  }
  return folded
}

/** Most sizes in a list: more numbers than that in brackets are something else. */
const mostSizes = 16

function sizesIn(
  pieces: readonly Piece[],
  start: number,
  close: string,
): { values: number[]; end: number } | null {
  const values: number[] = []
  for (let at = start; at < pieces.length && values.length <= mostSizes; at++) {
    const piece = pieces[at] as Piece
    if (piece.kind === 'number' && !piece.ordinal) values.push(piece.value)
    else if (piece.text === close && values.length > 0) return { values, end: at }
    else if (!between.has(piece.text)) return null
  }
  return null
}
