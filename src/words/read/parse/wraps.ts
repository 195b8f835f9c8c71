import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Item } from '../nodes'
import type { Cursor } from './cursor'
import { stitchItem } from './items'
import * as phrases from './phrases'

const pauses = new Set([',', ';', '.', ')', ']', '*'])
const oneLoop = new Set(['st', 'stitch', 'loop', 'peg', 'it'])

/**
 * "Work wraps together with the stitch": a note on how a peg with wraps is worked, which is nothing
 * to chart. "Knit the wrap together with the stitch" works that stitch as well: it is returned.
 * Null if no such words stand here.
 */
export function readWraps(cursor: Cursor): readonly Item[] | null {
  const start = cursor.at
  const how = cursor.text()
  const works = cursor.eatOne(phrases.wrapsWorked, 'word')
  if (!works && !cursor.eatOne(phrases.wrapNotes, 'word')) return null
  const stitch = standardVocabulary.withRole(how === 'purl' ? 'purl' : 'knit')
  let one = false
  let peg: number | null = null
  while (!cursor.done && !pauses.has(cursor.text())) {
    one ||= oneLoop.has(cursor.text())
    if (cursor.eat('peg #', 'peg')) peg = (cursor.numbers[0]?.value ?? 1) - 1
    else cursor.take(1, 'word')
  }
  if (!works || !one) return []
  const range = cursor.rangeFrom(start)
  if (peg === null) return [stitchItem(stitch, 1, range)]
  return [{ do: 'pegs', stitch, first: peg, last: peg, back: false, range }]
}
