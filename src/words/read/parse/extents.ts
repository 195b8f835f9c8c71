import type { Copies, Often } from '../nodes'
import type { Cursor } from './cursor'
import * as phrases from './phrases'

/** "to end", "around", "to last 2 sts", "to marker": null if no such words stand here. */
export function readUntil(cursor: Cursor): Copies | null {
  if (cursor.eatOne(phrases.untilMark, 'repeat')) return { kind: 'open' }
  if (cursor.eatOne(phrases.untilLast, 'repeat')) {
    const last = cursor.numbers[0]?.value ?? 0
    cursor.eatOne(phrases.inRow, 'repeat')
    return { kind: 'until', last, ending: false }
  }
  if (cursor.eatOne(phrases.untilLastOne, 'repeat'))
    return { kind: 'until', last: 1, ending: false }
  if (!cursor.eatOne(phrases.untilEnd, 'repeat')) return null
  return { kind: 'until', last: 0, ending: readEnding(cursor) }
}

/** "ending k1", "end with k3": the last copy is cut short. */
export function readEnding(cursor: Cursor): boolean {
  const mark = cursor.mark()
  if (cursor.text() === ',' || cursor.text() === ';') cursor.take(1, 'punctuation')
  if (cursor.eatOne(phrases.endings, 'repeat')) return true
  cursor.back(mark)
  return false
}

const once: ReadonlyMap<string, number> = new Map([
  ['once', 1],
  ['twice', 2],
  ['thrice', 3],
])

/** "twice", "3 times more", "3 more times", "3 times in all", "x 3", "6 times", "3x". */
export function readTimes(cursor: Cursor): Often | null {
  const start = cursor.at
  const word = once.get(cursor.text())
  if (word !== undefined) {
    cursor.take(1, 'repeat')
    return often(cursor, word, start)
  }
  const number = () => cursor.numbers[0]?.value ?? 1
  if (cursor.eat('a? total of # times|time|x', 'repeat')) return { kind: 'all', times: number() }
  if (cursor.eat('# more|further|additional|extra|other times|time|x', 'repeat'))
    return { kind: 'more', times: number() }
  if (cursor.eat('# times|time|x', 'repeat') || cursor.eat('x #', 'repeat'))
    return often(cursor, number(), start)
  return null
}

function often(cursor: Cursor, times: number, start: number): Often {
  if (cursor.eat('more|again|further', 'repeat')) return { kind: 'more', times }
  if (cursor.eatOne(phrases.inAll, 'repeat')) return { kind: 'all', times }
  return { kind: 'bare', times, said: cursor.rangeFrom(start) }
}
