import { groupItem, itemOf, untilEnd } from './items'
import type { Parsing } from './parsing'
import * as phrases from './phrases'
import type { Stars } from './stars'

/** "Work 6 rows of tuck", "of sl wyif (slip, yarn in front)": the stitch, on all pegs. */
export function readRowsOf({ cursor, spellings }: Parsing, stars: Stars): void {
  const start = cursor.at
  if (!cursor.looksAt('of')) return
  const found = spellings.find(cursor.pieces, start + 1)
  const end = cursor.pieces[found?.end ?? -1]?.text ?? ''
  if (found?.meaning.is !== 'stitch' || !(end === '' || end === '(' || end === '.')) return
  cursor.take(1, 'word')
  cursor.take(found.end - cursor.at, 'stitch')
  const range = cursor.rangeFrom(start + 1)
  stars.items.push(groupItem([itemOf(found.meaning, 1, range)], untilEnd, range))
  if (cursor.text() !== '(' || phrases.aboutLength.some((phrase) => cursor.looksAt(phrase))) return
  const close = cursor.pieces.findIndex(({ text }, at) => at > cursor.at && text === ')')
  if (close > 0) cursor.take(close + 1 - cursor.at, 'word')
}
