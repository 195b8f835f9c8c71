import { readUntil } from './extents'
import type { Parsing } from './parsing'
import * as phrases from './phrases'
import type { Stars } from './stars'

const themselves = new Set(['themselves', 'itself', 'you'])

/** "Knit the knits and purl the purls", "work sts as they appear": false if none stand here. */
export function readAppearing(parsing: Parsing, stars: Stars): boolean {
  const { cursor } = parsing
  const start = cursor.at
  const looks = cursor.eatOne(phrases.appearing, 'stitch')
  if (!looks && !cursor.eatOne(phrases.asEstablished, 'stitch')) return false
  if (themselves.has(cursor.text())) cursor.take(1, 'word')
  const range = cursor.rangeFrom(start)
  const until = readUntil(cursor)
  parsing.appears ??= { range, set: !looks }
  stars.items.push({ do: 'appear', last: until?.kind === 'until' ? until.last : 0, range })
  stars.sentenceEnds()
  return true
}
