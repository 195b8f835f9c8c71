import type { PegsItem } from '../nodes'
import type { Cursor } from './cursor'
import type { Reader } from './parsing'
import * as phrases from './phrases'

const turns = [
  [phrases.germanTurns, 'German turn'],
  [phrases.wrapTurns, 'wrap'],
  [phrases.plainTurns, 'on'],
] as const

/** "w&t", "wrap peg 21 and turn", "German turn on peg 20", "turn". */
export const readTurn: Reader = (parsing) => {
  const { cursor } = parsing
  const start = cursor.at
  const turn = turns.find(([list]) => cursor.eat(list, 'turn'))
  if (!turn) return false
  const [, end] = turn
  const [peg] = cursor.numbers
  if (end === 'on') cursor.eat(phrases.afterTurn, 'turn')
  const range = cursor.rangeFrom(start)
  parsing.put({ do: 'turn', end, peg: peg && end !== 'on' ? peg.value - 1 : null, range })
  parsing.stars.sentenceEnds()
  return true
}

export const readNamedPegs: Reader = (parsing) => {
  const pegs = readPegs(parsing.cursor)
  parsing.put(...pegs.map((one): PegsItem => ({ do: 'pegs', stitch: null, ...one })))
  return pegs.length > 0
}

type Pegs = Omit<PegsItem, 'stitch' | 'do'>

/**
 * Pegs by number: "pegs 20 to 1", "from peg 12 to peg 1", "peg 4, going back", "from 1-11",
 * "pegs 3-6 and 9". Empty if no such words stand here.
 */
export function readPegs(cursor: Cursor): readonly Pegs[] {
  const start = cursor.at
  if (cursor.eat(phrases.pegRanges, 'peg')) return [pegsOf(cursor, start)]
  if (!cursor.eat(phrases.singlePegs, 'peg')) return []
  const list = [pegsOf(cursor, start)]
  if (cursor.eat(phrases.goingBack, 'peg')) return list.map((one) => ({ ...one, back: true }))
  for (;;) {
    const ahead = cursor.measure(phrases.morePegs)
    const after = cursor.text(ahead)
    if (ahead === 0 || /^(?:sts?|stitch|times|rnds?|rows?)/.test(after)) break
    cursor.take(ahead - 1, 'punctuation')
    list.push(...readBare(cursor))
  }
  return list
}

/** "7-24" behind a stitch; a number alone is a number of stitches. */
export const readBarePegs = (cursor: Cursor): readonly Pegs[] =>
  cursor.looksAt('# -|through #') && cursor.text(3) !== 'times' ? readBare(cursor) : []

function readBare(cursor: Cursor): readonly Pegs[] {
  const start = cursor.at
  return cursor.eat(phrases.barePegs, 'peg') ? [pegsOf(cursor, start)] : []
}

function pegsOf(cursor: Cursor, start: number): Pegs {
  const [first, last] = cursor.numbers
  const from = first?.value ?? 1
  const to = last?.value ?? from
  return { first: from - 1, last: to - 1, back: to < from, range: cursor.rangeFrom(start) }
}
