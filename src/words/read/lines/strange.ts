import { nearest } from '../terms/near'
import type { Body } from '../nodes'
import type { Statement } from './outline'
import { nearWords } from '../terms/spellings'

interface Line {
  readonly statement: Statement
  readonly body: Body
}

/** How many words a text has, and how many of them are not known. */
export interface Strange {
  readonly unknown: number
  readonly words: number
}

/** Fewer words that are not known are slips, or stitches that the words do not explain. */
const leastUnknown = 4

/** Words that hardly any English text does without and that other languages do not have. */
const english =
  /\b(?:the|and|of|to|is|are|with|this|your|you|it|from|then|each|all|rows?|rnds?|rounds?|stitch(?:es)?|sts|knit(?:ted)?|purl|pegs?|loom|yarn|cast|bind)\b/i

/** The rows told are mostly of words that are not known, and that no known one is near to; else null. */
export function strangeRows(told: readonly Line[]): Strange | null {
  const least = told.reduce((sum, { body }) => sum + body.unknown, 0)
  if (least < leastUnknown) return null
  const strange = new Set<string>()
  let unknown = 0
  let words = 0
  for (const { statement, body } of told) {
    const { kinds, bounds } = body.tokens
    kinds.forEach((kind, i) => {
      const word = statement.text.slice(bounds[2 * i] ?? 0, bounds[2 * i + 1] ?? 0)
      if (kind === 'punctuation' || !/\p{L}/u.test(word)) return
      words++
      if (kind !== 'unknown') return
      unknown++
      if (strange.size < leastUnknown && nearest(word, nearWords()).length === 0)
        strange.add(word.toLowerCase())
    })
  }
  return strange.size >= leastUnknown && 2 * unknown > words ? { unknown, words } : null
}

/** The same of a text that tells no rows: not one word in it is surely English. */
export function strangeText(text: string): Strange | null {
  const words = text.match(/\p{L}{2,}/gu)?.length ?? 0
  return words >= leastUnknown && !english.test(text) ? { unknown: words, words } : null
}
