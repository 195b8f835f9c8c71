import type { PegsItem, TurnItem } from '../nodes'
import type { Cursor } from './cursor'
import * as phrases from './phrases'

/** "w&t", "wrap peg 21 and turn", "German turn on peg 20", "turn": null if none stands here. */
export function readTurn(cursor: Cursor): TurnItem | null {
  const start = cursor.at
  const item = (end: TurnItem['end'], peg: number | null): TurnItem => ({
    do: 'turn',
    end,
    peg,
    range: cursor.rangeFrom(start),
  })
  const named = () => {
    const [peg] = cursor.numbers
    return peg ? peg.value - 1 : null
  }
  if (cursor.eatOne(phrases.germanTurns, 'turn')) return item('German turn', named())
  if (cursor.eatOne(phrases.wrapTurns, 'turn')) return item('wrap', named())
  if (!cursor.eatOne(phrases.plainTurns, 'turn')) return null
  cursor.eatOne(phrases.afterTurn, 'turn')
  return item('on', null)
}

type Pegs = Omit<PegsItem, 'stitch' | 'do'>

/**
 * Pegs by number: "pegs 20 to 1", "from peg 12 to peg 1", "peg 4, going back", "from 1-11",
 * "pegs 3-6 and 9". Empty if no such words stand here.
 */
export function readPegs(cursor: Cursor): readonly Pegs[] {
  const start = cursor.at
  if (cursor.eatOne(phrases.pegRanges, 'peg')) return [pegsOf(cursor, start)]
  if (!cursor.eatOne(phrases.singlePegs, 'peg')) return []
  const list = [pegsOf(cursor, start)]
  if (cursor.eatOne(phrases.goingBack, 'peg')) return list.map((one) => ({ ...one, back: true }))
  while (cursor.looksAtOne(phrases.morePegs)) {
    const ahead = cursor.measureOne(phrases.morePegs)
    const after = cursor.text(ahead)
    if (/^(?:sts?|stitch|times|rnds?|rows?|-)/.test(after) && after !== '-') break
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
  return cursor.eatOne(['# -|to|through #'], 'peg') || cursor.eat('#', 'peg')
    ? [pegsOf(cursor, start)]
    : []
}

function pegsOf(cursor: Cursor, start: number): Pegs {
  const [first, last] = cursor.numbers
  const from = first?.value ?? 1
  const to = last?.value ?? from
  return { first: from - 1, last: to - 1, back: to < from, range: cursor.rangeFrom(start) }
}
