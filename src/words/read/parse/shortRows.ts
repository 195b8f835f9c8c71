import { standardVocabulary } from '../../../stitches/vocabulary'
import { stitchItem } from './items'
import type { Reader } from './parsing'
import * as phrases from './phrases'

/** "Make DS on peg 18", "working DS as one". */
export const readDoubled: Reader = (parsing) => {
  const { cursor } = parsing
  const start = cursor.at
  if (cursor.eat(phrases.doubledNotes, 'word')) return true
  if (!cursor.eat(phrases.makesDoubled, 'stitch')) return false
  return parsing.put({ do: 'choice', rule: 'ask-ds', count: 1, range: cursor.rangeFrom(start) })
}

const pauses = new Set([',', ';', '.', ')', ']', '*'])
const oneLoop = new Set(['st', 'stitch', 'loop', 'peg', 'it'])

/**
 * "Work wraps together with the stitch": a note on how a peg with wraps is worked, which is nothing
 * to chart. "Knit the wrap together with the stitch" works that stitch as well.
 */
export const readWraps: Reader = (parsing) => {
  const { cursor } = parsing
  const start = cursor.at
  const how = cursor.text()
  const works = cursor.eat(phrases.wrapsWorked, 'word')
  if (!works && !cursor.eat(phrases.wrapNotes, 'word')) return false
  const stitch = standardVocabulary.withRole(how === 'purl' ? 'purl' : 'knit')
  let one = false
  let peg: number | null = null
  while (!cursor.done && !pauses.has(cursor.text())) {
    one ||= oneLoop.has(cursor.text())
    if (cursor.eat('peg #', 'peg')) peg = cursor.number - 1
    else cursor.take(1, 'word')
  }
  if (!works || !one) return true
  const range = cursor.rangeFrom(start)
  return parsing.put(
    peg === null
      ? stitchItem(stitch, 1, range)
      : { do: 'pegs', stitch, first: peg, last: peg, back: false, range },
  )
}
