import type { Said } from '../nodes'
import { closing } from '../lines/lex'
import type { Cursor } from './cursor'

const loops = 'st|sts|stitch|stitches|loop|loops|peg|pegs'
const rows = 'rnd|rnds|round|rounds|row|rows'

const changes: readonly string[] = [
  `total? of? # ${loops}? inc|increased|incd|incs`,
  `inc|increase|increased # ${loops}`,
]
const losses: readonly string[] = [
  `total? of? # ${loops}? dec|decreased|decd|decs`,
  `dec|decrease|decreased # ${loops}`,
]
const totals: readonly string[] = [
  `you? will|should? now? have # ${loops}?`,
  `=|- # ${loops}`,
  `=|- #`,
  `total? of? # ${loops} rem|remain|remains|remaining|left|in|on|total|altogether|now`,
  `# rem|remain|remains|remaining|left`,
  `total? of? # ${loops}`,
]
const tails: readonly string[] = [
  'in all',
  'in total',
  'on? the? left|right|back|front|first|second|third needle|needles?',
  'on the? loom|needle|needles',
  'rem|remain|remaining|left|total|altogether|now|all|loom|pegs|sts',
]

/** "24 sts rem", "= 24 sts", "2 sts inc": as it stands without brackets. */
export function readCount(cursor: Cursor): Said | null {
  // The mark before the number is no part of it.
  const start = cursor.at + (['=', '-'].includes(cursor.text()) ? 1 : 0)
  const say = (kind: Said['kind'], sign = 1): Said => {
    let count = sign * cursor.number
    cursor.eat(tails, 'count')
    // "29 stitches on back needle, 76 in all"
    if (kind === 'total' && cursor.eat(', # in? all|total|altogether', 'count'))
      count = cursor.number
    return { kind, count, range: cursor.rangeFrom(start) }
  }
  if (cursor.eat(changes, 'count')) return say('change')
  if (cursor.eat(losses, 'count')) return say('change', -1)
  if (cursor.eat(`# ${rows} in? all|total|altogether?`, 'count')) return say('rows')
  if (cursor.eat(totals, 'count')) return say('total')
  return null
}

/** "(24 sts)", "[40]", "(12 rnds in all, 24 sts)", "[14 + 13 + 14 = 41]"; null for other brackets. */
export function readCountInBrackets(cursor: Cursor): Said[] | null {
  const close = closing.get(cursor.text())
  if (!close || close === '}') return null
  const mark = cursor.mark()
  cursor.take(1, 'count')
  const said: Said[] = []
  while (!cursor.done && cursor.text() !== close) {
    const sum = readSum(cursor) ?? readCount(cursor) ?? readBare(cursor, close)
    if (sum) said.push(sum)
    else if (!cursor.eat(',|;|and|total|now|you|have', 'count')) break
  }
  if (cursor.text() !== close || said.length === 0) {
    cursor.back(mark)
    return null
  }
  cursor.take(1, 'count')
  return addedUp(said)
}

/** "(25 sts on left needle, 10 sts on right)": 35 in all. */
function addedUp(said: readonly Said[]): Said[] {
  const [first, ...more] = said.filter(({ kind }) => kind === 'total')
  if (!first || more.length === 0) return [...said]
  const count = more.reduce((sum, one) => sum + one.count, first.count)
  const range = { from: first.range.from, to: more.at(-1)?.range.to ?? first.range.to }
  return [...said.filter(({ kind }) => kind !== 'total'), { kind: 'total', count, range }]
}

function readBare(cursor: Cursor, close: string): Said | null {
  const piece = cursor.piece()
  if (piece?.kind !== 'number' || cursor.text(1) !== close) return null
  const start = cursor.at
  cursor.take(1, 'count')
  return { kind: 'total', count: piece.value, range: cursor.rangeFrom(start) }
}

/** "14 + 13 + 14 = 41" */
function readSum(cursor: Cursor): Said | null {
  if (!cursor.isNumber() || cursor.text(1) !== '+') return null
  const start = cursor.at
  const mark = cursor.mark()
  let sum = cursor.piece()?.value ?? 0
  cursor.take(1, 'count')
  while (cursor.text() === '+' && cursor.isNumber(1)) {
    sum += cursor.piece(1)?.value ?? 0
    cursor.take(2, 'count')
  }
  if (cursor.eat(`= # ${loops}?`, 'count')) sum = cursor.number
  else if (!cursor.eat(loops, 'count')) {
    cursor.back(mark)
    return null
  }
  return { kind: 'total', count: sum, range: cursor.rangeFrom(start) }
}
