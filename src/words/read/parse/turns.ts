import type { PegsItem, TurnItem } from '../nodes'
import type { Cursor } from './cursor'

const German: readonly string[] = [
  'german turn on|at peg #',
  'german turn',
  'turn , ds',
  'turn . ds',
  'turn ; ds',
  'turn and? make|work ds',
  'turn ds',
  'turn and? make|work a? double stitch',
  'turn , make|work a? ds|double stitch?',
  'german short row turn',
]
const wraps: readonly string[] = [
  'wrap the? peg # and|, turn',
  'wrap the? next? st|stitch|peg and|, turn',
  'wrap and turn peg? #',
  'wrap & turn peg? #',
  'wrap and|& turn',
  'w & t peg? #',
  'w and t peg? #',
  'wt peg #',
  'w & t',
  'w and t',
  'wt',
  'wrap peg #',
  'wrap next peg|st|stitch',
]

const afterPlain: readonly string[] = [
  ', leaving|leave these|those|the|rem|remaining? rem|remaining? st|sts|stitches|pegs unworked?',
  '. leave|leaving the? rem|remaining? st|sts|stitches|pegs unworked?',
  'leaving|leave these|those|the|rem|remaining? st|sts|stitches|pegs unworked?',
]

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
    const peg = cursor.numbers[0]
    return peg ? peg.value - 1 : null
  }
  if (cursor.eatOne(German, 'turn')) return item('German turn', named())
  if (cursor.eatOne(wraps, 'turn')) return item('wrap', named())
  if (cursor.eat('turn the? work?', 'turn')) {
    cursor.eatOne(afterPlain, 'turn')
    return item('on', null)
  }
  return null
}

/**
 * Pegs by number: "pegs 20 to 1", "from peg 12 to peg 1", "peg 4, going back", "from 1-11",
 * "pegs 3-6". Null if no such words stand here.
 */
export function readPegs(cursor: Cursor): Omit<PegsItem, 'stitch' | 'do'> | null {
  const start = cursor.at
  const item = (first: number, last: number, back: boolean) => ({
    first: first - 1,
    last: last - 1,
    back,
    range: cursor.rangeFrom(start),
  })
  const two = ['from? peg|pegs # to|through|- peg? #', 'from # to|through|- peg? #', 'pegs # and #']
  if (cursor.eatOne(two, 'peg')) {
    const [first, last] = cursor.numbers
    const from = first?.value ?? 1
    const to = last?.value ?? from
    return item(from, to, to < from)
  }
  if (!cursor.eat('on? peg|pegs #', 'peg')) return null
  const peg = cursor.numbers[0]?.value ?? 1
  const back = cursor.eatOne([', going back', 'going back'], 'peg')
  return item(peg, peg, back)
}
