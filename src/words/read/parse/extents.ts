import { timesWords } from '../lines/numberWords'
import type { Copies, Often } from '../nodes'
import type { Cursor } from './cursor'
import * as phrases from './phrases'

/** "to end", "around", "to last 2 sts", "to marker": null if no such words stand here. */
export function readUntil(cursor: Cursor): Copies | null {
  if (cursor.eat(phrases.untilMark, 'repeat')) return { kind: 'open' }
  if (cursor.eat(phrases.untilLast, 'repeat')) {
    const last = cursor.numbers.length > 0 ? cursor.number : 1
    cursor.eat(phrases.inRow, 'repeat')
    return { kind: 'until', last, ending: false }
  }
  if (!cursor.eat(phrases.untilEnd, 'repeat')) return null
  return { kind: 'until', last: 0, ending: readEnding(cursor) }
}

/** "ending k1", "end with k3": the last copy is cut short. */
export function readEnding(cursor: Cursor): boolean {
  const mark = cursor.mark()
  if (cursor.text() === ',' || cursor.text() === ';') cursor.take(1, 'punctuation')
  if (cursor.eat(phrases.endings, 'repeat')) return true
  cursor.back(mark)
  return false
}

/** How often something is worked, where a number says it. */
type Times = Extract<Often, { readonly times: number }>

/** So many times in all; a bare number is one, too. */
export const inAll = ({ kind, times }: Times): Copies => ({
  kind: 'fixed',
  times: kind === 'more' ? times + 1 : times,
})

/** "twice", "3 times more", "3 more times", "3 times in all", "x 3", "6 times", "3x". */
export function readTimes(cursor: Cursor): Times | null {
  const start = cursor.at
  const word = timesWords.get(cursor.text())
  if (word !== undefined) {
    cursor.take(1, 'repeat')
    return often(cursor, word, start)
  }
  if (cursor.eat('a? total of # times|time|x', 'repeat'))
    return { kind: 'all', times: cursor.number }
  if (cursor.eat('# more|further|additional|extra|other times|time|x', 'repeat'))
    return { kind: 'more', times: cursor.number }
  if (cursor.eat(phrases.bareTimes, 'repeat')) return often(cursor, cursor.number, start)
  return null
}

function often(cursor: Cursor, times: number, start: number): Times {
  if (cursor.eat('more|again|further', 'repeat')) return { kind: 'more', times }
  if (cursor.eat(phrases.inAll, 'repeat')) return { kind: 'all', times }
  return { kind: 'bare', times, said: cursor.rangeFrom(start) }
}
