import { nameRows } from '../limits'
import type { Named, Often, Reference } from '../nodes'
import type { Cursor } from './cursor'
import { readTimes } from './extents'
import * as phrases from './phrases'

const rowWords = 'rnd|rnds|round|rounds|row|rows|r'

/** "Rnds 1-4", "1st and 2nd rows", "rows 7 through 13", "the last 2 rows", "these two rows". */
export function readNamed(cursor: Cursor): Named | null {
  const mark = cursor.mark()
  cursor.eat('the|above', 'reference')
  if (cursor.eat(`last|previous # ${rowWords}`, 'reference'))
    return { kind: 'last', rows: cursor.number }
  if (cursor.eat(`last|previous|this|that ${rowWords}`, 'reference'))
    return { kind: 'last', rows: 1 }
  if (cursor.eat(`these|those|above # ${rowWords}`, 'reference'))
    return { kind: 'last', rows: cursor.number }
  if (cursor.eat(`these|those|all|above ${rowWords}`, 'reference')) return { kind: 'these' }
  const plural = cursor.text().endsWith('s')
  if (cursor.eat(`${rowWords} .? no?`, 'reference')) {
    const numbers = readNumbers(cursor)
    if (numbers.length > 0) return { kind: 'numbers', numbers }
    return plural ? { kind: 'these' } : { kind: 'last', rows: 1 }
  }
  if (cursor.piece()?.ordinal) {
    const numbers = readNumbers(cursor)
    if (cursor.eat(rowWords, 'reference')) return { kind: 'numbers', numbers }
  }
  cursor.back(mark)
  return null
}

/** "1-4", "1 and 2", "1, 3, 5", "1st to 4th", "7 through 13" */
export function readNumbers(cursor: Cursor): number[] {
  const numbers: number[] = []
  while (cursor.isNumber()) {
    const first = cursor.piece()?.value ?? 0
    cursor.take(1, 'row')
    const last = cursor.eat('-|to|through|thru #', 'reference', 'row') ? cursor.number : first
    nameRows(numbers, first, last)
    if (cursor.measure(', and|& #') === 3) cursor.take(2, 'reference')
    else if (cursor.measure(',|and|& #') === 2 && !countFollows(cursor)) cursor.take(1, 'reference')
    else break
  }
  return numbers
}

/** "Rows 1 and 2, 8 times": the 8 is no row. */
const countFollows = (cursor: Cursor): boolean =>
  cursor.looksAt(', # more|further|additional? times|time|x|in|total')

/** "for 5 cm", "until you have 3.5 inches": a length, which needs the gauge. */
export function readLength(cursor: Cursor): boolean {
  const mark = cursor.mark()
  if (cursor.eat(phrases.someLength, 'reference')) return true
  if (cursor.eat(phrases.lengthStarts, 'reference') && cursor.eat(phrases.lengths, 'reference')) {
    cursor.eat(phrases.lengthEnds, 'reference')
    return true
  }
  cursor.back(mark)
  return false
}

const withColour: readonly string[] = ['with colour|color? a|b|c|d|mc|cc ,?']
const likeRows: readonly string[] = ['as|like', 'same as']
const repeatRows: readonly string[] = ['rep|repeat|repeats|work']
/** What references and repeats begin with. */
export const referenceStarts: readonly string[] = [
  ...withColour,
  ...likeRows,
  ...repeatRows,
  'repeating',
]

/**
 * "As Rnd 1", "Rep Rnds 1-4 twice more", "Repeat Row 2", "Rep 1st rnd for 5 cm", "Rep Rnd 1 until
 * 20 rnds are worked", "Rep Rnd 50 until Rnd 65 is worked".
 */
export function readReference(cursor: Cursor): Reference | null {
  const mark = cursor.mark()
  cursor.eat(withColour, 'word')
  const start = cursor.at
  const how = cursor.eat(likeRows, 'reference')
    ? 'as'
    : cursor.eat(repeatRows, 'reference')
      ? 'rep'
      : null
  const named = how && readNamed(cursor)
  if (!how || !named) {
    cursor.back(mark)
    return null
  }
  const often = readOften(cursor)
  const rep = how === 'as' && often.kind === 'none' ? 'as' : 'rep'
  return { how: rep, named, often, range: cursor.rangeFrom(start) }
}

/** "until all stitches at the ends are used up": up to the end of the sentence. */
function readOpen(cursor: Cursor): Often {
  while (!cursor.done && !/^[.;([]$/.test(cursor.text())) cursor.take(1, 'reference')
  return { kind: 'open', pattern: false }
}

/** So many words may stand between the rows that are repeated and how often. */
const mostSkipped = 14

function readOften(cursor: Cursor): Often {
  const mark = cursor.mark()
  let open = 0
  for (let skip = 0; skip < mostSkipped && !cursor.done; skip++) {
    const start = cursor.at
    const times = readTimes(cursor)
    if (times) return times
    if (readLength(cursor)) return { kind: 'length' }
    if (cursor.eat('for|in the? patt|pattern|pat', 'reference'))
      return { kind: 'open', pattern: true }
    if (cursor.eat(phrases.untilRows, 'reference'))
      return { kind: 'until', rows: cursor.number, said: cursor.rangeFrom(start) }
    if (cursor.eat(phrases.throughRow, 'reference', 'row'))
      return { kind: 'through', number: cursor.number }
    if (cursor.text() === 'until') return readOpen(cursor)
    const text = cursor.text()
    if (text === '(') open++
    if (text === ')') open--
    if ((text === '.' || text === ';') && open <= 0) break
    // "Rep last rnd of (K2, P2) ribbing 4 times more": what is named again is no news.
    cursor.take(1, 'reference')
  }
  cursor.back(mark)
  return { kind: 'none' }
}
