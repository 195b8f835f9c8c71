import { standardVocabulary } from '../../../stitches/vocabulary'
import { readUntil } from './extents'
import { fillItem, groupItem, itemOf, stitchItem, untilEnd } from './items'
import type { Parsing, Reader } from './parsing'
import * as phrases from './phrases'
import { readLength } from './references'

const themselves = new Set(['themselves', 'itself', 'you'])

/** "Knit the knits and purl the purls", "work sts as they appear". */
export const readAppearing: Reader = (parsing) => {
  const { cursor, found } = parsing
  const start = cursor.at
  const looks = cursor.eat(phrases.appearing, 'stitch')
  if (!looks && !cursor.eat(phrases.asEstablished, 'stitch')) return false
  if (themselves.has(cursor.text())) cursor.take(1, 'word')
  const range = cursor.rangeFrom(start)
  found.appears ??= { range, set: !looks }
  parsing.put(fillItem(null, false, readUntil(cursor), range))
  parsing.stars.sentenceEnds()
  return true
}

const oneStitch = [
  [phrases.stockinette, standardVocabulary.withRole('knit')],
  [phrases.reversed, standardVocabulary.withRole('purl')],
] as const

/** "for 5 rows", "for 5 cm", "in st st", "work even". */
export const readRows: Reader = (parsing) => {
  const { cursor, found } = parsing
  const start = cursor.at
  if (cursor.looksAt(phrases.inStitches)) {
    cursor.take(1, 'word')
    return true
  }
  for (const [list, stitch] of oneStitch) {
    if (!cursor.eat(list, 'stitch')) continue
    const range = cursor.rangeFrom(start)
    return parsing.put(groupItem([stitchItem(stitch, 1, range)], untilEnd, range))
  }
  if (cursor.eat(phrases.rowsLong, 'count')) {
    found.rows = Math.max(1, cursor.number)
    readRowsOf(parsing)
  } else if (readLength(cursor)) found.measured = cursor.rangeFrom(start)
  else {
    const set = cursor.eat(phrases.asSet, 'word')
    if (!set && !cursor.eat(phrases.even, 'word')) return false
    found.workEven = { range: cursor.rangeFrom(start), set }
    if (cursor.eat(`# ${phrases.rowWords}`, 'count')) found.rows = Math.max(1, cursor.number)
  }
  return true
}

/** "Work 6 rows of tuck", "of sl wyif (slip, yarn in front)": the stitch, on all pegs. */
function readRowsOf(parsing: Parsing): void {
  const { cursor } = parsing
  const start = cursor.at
  if (!cursor.looksAt('of')) return
  const found = parsing.settings.spellings.find(cursor.pieces, start + 1)
  const end = cursor.pieces[found?.end ?? -1]?.text ?? ''
  if (found?.meaning.is !== 'stitch' || !(end === '' || end === '(' || end === '.')) return
  cursor.take(1, 'word')
  cursor.take(found.end - cursor.at, 'stitch')
  const range = cursor.rangeFrom(start + 1)
  parsing.put(groupItem([itemOf(found.meaning, 1, range)], untilEnd, range))
  if (cursor.text() !== '(' || cursor.looksAt(phrases.aboutLength)) return
  const close = cursor.pieces.findIndex(({ text }, at) => at > cursor.at && text === ')')
  if (close > 0) cursor.take(close + 1 - cursor.at, 'word')
}
