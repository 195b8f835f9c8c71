import type { Copies, Often } from '../nodes'
import type { Cursor } from './cursor'

const ends = 'rnd|rnds|round|row|rows|needle|loom|section|last'
const loops = 'st|sts|stitch|stitches|loop|loops|peg|pegs'

const toEnd: readonly string[] = [
  `to|until|till the? end of the? ${ends}`,
  'to|until|till the? end of the|this|these? sts|stitches|pegs',
  'to|until|till the? end',
  `for the? entire|whole ${ends}`,
  `all? the? way? around|round the? loom|${ends}`,
  'all? the? way? around',
  'all round',
  `across the? loom|${ends}`,
  'across all? the? sts|stitches|pegs',
  'across',
  `to|until|till the? ${ends} end`,
  'over all sts|stitches|pegs',
  `on|over all|every peg|pegs|sts|stitches`,
]

const toLast: readonly string[] = [
  `to|until|till the? last # ${loops}`,
  `to|until|till the? last # `.trim(),
  `to|until|till within? # ${loops} of|from|before the? end of the? ${ends}`,
  `to|until|till within? # ${loops} of|from|before the? end`,
  'to|until|till within # of the? end',
  `to|until|till # ${loops} before|from the? end of the? ${ends}`,
  `to|until|till # ${loops} before|from the? end`,
  `to|until|till only? # ${loops} rem|remain|remains|remaining|left|rems`,
  'to|until|till only? # rem|remain|remains|remaining|left|rems',
]

const toLastOne = `to|until|till the? last st|stitch|loop|peg`

const toMarker: readonly string[] = [
  `to|until|till # ${loops} before the? next? marker|m|pm|gap|turn`,
  'to|until|till the? next|last? marker|m|gap|turn',
  'to|until|till # before the? next? marker|m|gap',
]

/** "to end", "around", "to last 2 sts", "to marker": null if no such words stand here. */
export function readUntil(cursor: Cursor): Copies | null {
  if (cursor.eatOne(toMarker, 'repeat')) return { kind: 'open' }
  if (cursor.eatOne(toLast, 'repeat')) {
    const last = cursor.numbers[0]?.value ?? 0
    cursor.eat('in the? rnd|round|row', 'repeat')
    return { kind: 'until', last, ending: false }
  }
  if (cursor.eat(toLastOne, 'repeat')) return { kind: 'until', last: 1, ending: false }
  if (!cursor.eatOne(toEnd, 'repeat')) return null
  return { kind: 'until', last: 0, ending: readEnding(cursor) }
}

/** "ending k1", "end with k3": the last copy is cut short. */
export function readEnding(cursor: Cursor): boolean {
  const start = cursor.at
  const { tokens, known } = cursor
  const kept = tokens.length
  if (cursor.text() === ',' || cursor.text() === ';') cursor.take(1, 'punctuation')
  if (cursor.eat('end|ending|ends last? repeat|rep? with?', 'repeat')) return true
  cursor.back(start, kept, known)
  return false
}

const once: Readonly<Record<string, number>> = { once: 1, twice: 2, thrice: 3 }

/** "twice", "3 times more", "3 more times", "3 times in all", "x 3", "6 times", "3x". */
export function readTimes(cursor: Cursor): Often | null {
  const start = cursor.at
  const word = once[cursor.text()]
  if (word !== undefined) {
    cursor.take(1, 'repeat')
    return often(cursor, word, start)
  }
  if (cursor.eat('a? total of # times|time|x', 'repeat'))
    return { kind: 'all', times: cursor.numbers[0]?.value ?? 1 }
  if (cursor.eat('# more|further|additional|extra|other times|time|x', 'repeat'))
    return { kind: 'more', times: cursor.numbers[0]?.value ?? 1 }
  if (cursor.eat('#', 'repeat')) {
    const times = cursor.numbers[0]?.value ?? 1
    if (cursor.eat('times|time|x', 'repeat')) return often(cursor, times, start)
    cursor.back(start, cursor.tokens.length - 1, cursor.known - 1)
    return null
  }
  if (cursor.eat('x #', 'repeat')) return often(cursor, cursor.numbers[0]?.value ?? 1, start)
  return null
}

const inAll: readonly string[] = [
  'in all',
  'in total',
  'total',
  'altogether',
  'all together',
  'all told',
]

function often(cursor: Cursor, times: number, start: number): Often {
  if (cursor.eat('more|again|further', 'repeat')) return { kind: 'more', times }
  if (cursor.eatOne(inAll, 'repeat')) return { kind: 'all', times }
  return { kind: 'bare', times, said: cursor.rangeFrom(start) }
}
