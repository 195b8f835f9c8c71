import type { Parsing } from './parsing'
import * as phrases from './phrases'
import type { Stars } from './stars'

/** "Make DS on peg 18", "working DS as one": false if no such words stand here. */
export function readDoubled({ cursor }: Parsing, stars: Stars): boolean {
  const start = cursor.at
  if (cursor.eatOne(phrases.doubledNotes, 'word')) return true
  if (!cursor.eatOne(phrases.makesDoubled, 'stitch')) return false
  const range = cursor.rangeFrom(start)
  stars.items.push({ do: 'choice', rule: 'ask-ds', count: 1, range })
  return true
}
