import type { Named, Often, Reference } from '../nodes'
import type { Cursor } from './cursor'
import { readTimes } from './extents'

const rowWords = 'rnd|rnds|round|rounds|row|rows|r'

/** "Rnds 1-4", "1st and 2nd rows", "rows 7 through 13", "the last 2 rows", "these two rows". */
export function readNamed(cursor: Cursor): Named | null {
  const start = cursor.at
  const { known } = cursor
  const kept = cursor.tokens.length
  cursor.eat('the|above', 'reference')
  if (cursor.eat(`last|previous # ${rowWords}`, 'reference'))
    return { kind: 'last', rows: cursor.numbers[0]?.value ?? 1 }
  if (cursor.eat(`last|previous|this|that ${rowWords}`, 'reference'))
    return { kind: 'last', rows: 1 }
  if (cursor.eat(`these|those|above # ${rowWords}`, 'reference'))
    return { kind: 'last', rows: cursor.numbers[0]?.value ?? 1 }
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
  cursor.back(start, kept, known)
  return null
}

const mostNumbers = 2000

/** "1-4", "1 and 2", "1, 3, 5", "1st to 4th", "7 through 13" */
export function readNumbers(cursor: Cursor): number[] {
  const numbers: number[] = []
  while (cursor.isNumber()) {
    const first = cursor.piece()?.value ?? 0
    cursor.take(1, 'reference')
    if (cursor.measure('-|to|through|thru #') === 2) {
      cursor.take(2, 'reference')
      const last = cursor.numbers[0]?.value ?? first
      for (let n = first; n <= last && numbers.length < mostNumbers; n++) numbers.push(n)
    } else numbers.push(first)
    if (cursor.measure(', and|& #') === 3) cursor.take(2, 'reference')
    else if (cursor.measure(',|and|& #') === 2 && !countFollows(cursor)) cursor.take(1, 'reference')
    else break
  }
  return numbers
}

/** "Rows 1 and 2, 8 times": the 8 is no row. */
const countFollows = (cursor: Cursor): boolean =>
  cursor.looksAt(', # more|further|additional? times|time|x|in|total')

const units = 'cm|mm|in|inch|inches|"|ins'
const lengths: readonly string[] = [
  `# #? /? #? ${units}`,
  `# . # ${units}`,
  `# . # . ${units}`,
  `# ½|¼|¾ ${units}`,
]
const lengthStarts: readonly string[] = [
  'for about? approx?',
  'until you have about?',
  'until the? piece|work|it|cuff|rib|section|hat|sock measures about?',
  'until the? required? desired? length',
  'to',
]

/** "for 5 cm", "until you have 3.5 inches": a length, which needs the gauge. */
export function readLength(cursor: Cursor): boolean {
  const start = cursor.at
  const { known } = cursor
  const kept = cursor.tokens.length
  if (cursor.eatOne(['until desired|required length', 'to desired|required length'], 'reference'))
    return true
  if (cursor.eatOne(lengthStarts, 'reference') && cursor.eatOne(lengths, 'reference')) {
    cursor.eatOne(['from the? beginning|beg|cast-on|start', 'long'], 'reference')
    return true
  }
  cursor.back(start, kept, known)
  return false
}

/** "As Rnd 1", "Rep Rnds 1-4 twice more", "Repeat Row 2", "Rep 1st rnd for 5 cm". */
export function readReference(cursor: Cursor): Reference | null {
  const start = cursor.at
  const { known } = cursor
  const kept = cursor.tokens.length
  cursor.eatOne(['with colour|color? a|b|c|d|mc|cc ,?'], 'word')
  const how = cursor.eat('as|like|same as?', 'reference')
    ? 'as'
    : cursor.eat('rep|repeat|repeats|work', 'reference')
      ? 'rep'
      : null
  const named = how && readNamed(cursor)
  if (!how || !named) {
    cursor.back(start, kept, known)
    return null
  }
  cursor.eat('for|in pattern|patt|pat', 'reference')
  const often = readOften(cursor)
  const rep = how === 'as' && often.kind === 'none' ? 'as' : 'rep'
  return { how: rep, named, often, range: cursor.rangeFrom(start) }
}

function readOften(cursor: Cursor): Often {
  const kept = cursor.tokens.length
  const { at, known } = cursor
  for (let skip = 0; skip < 14 && !cursor.done; skip++) {
    const times = readTimes(cursor)
    if (times) return times
    if (readLength(cursor)) return { kind: 'length' }
    if (cursor.text() === '.' || cursor.text() === ';') break
    // "Rep last rnd of (K2, P2) ribbing 4 times more": what is named again is no news.
    cursor.take(1, 'reference')
  }
  cursor.back(at, kept, known)
  return { kind: 'none' }
}
