import { closing, lex } from '../lines/lex'
import { readLimits } from '../limits'
import type { Body, Copies } from '../nodes'
import { bracketOpen, tooDeep, unknownWord } from '../remarks/parsing'
import { readCount, readCountInBrackets } from './counts'
import { Cursor, startsIn } from './cursor'
import { inAll, readEnding, readTimes, readUntil } from './extents'
import { readFabric } from './fabrics'
import { readInOne } from './inOne'
import { groupItem, once } from './items'
import { Parsing, type ParseSettings, type Reader } from './parsing'
import * as phrases from './phrases'
import { readReference, referenceStarts } from './references'
import { readAppearing, readRows } from './rows'
import { readDoubled, readWraps } from './shortRows'
import { readStitch } from './stitch'
import { readNamedPegs, readTurn } from './turns'

/** Read the words of a row, after its head. Never fails: what is not known becomes remarks. */
export function parseBody(text: string, settings: ParseSettings): Body {
  const pieces = lex(text, settings.size)
  const cursor = new Cursor(pieces)
  const parsing = new Parsing(cursor, settings, text)
  const items = parsing.list(() => {
    while (!cursor.done) {
      // A closing bracket that nothing opened is passed over.
      if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
      else readItem(parsing)
    }
  })
  return {
    ...parsing.found,
    items,
    tokens: cursor.tokens(),
    known: cursor.known,
    sizes: pieces
      .filter(({ sizes }) => sizes > 1)
      .map(({ sizes, from, to }) => ({ length: sizes, range: { from, to } })),
  }
}

const pauses = new Set([',', ';', '.', ':', '|', '-', '/'])
const isClosing = (text: string): boolean => text === ')' || text === ']' || text === '}'

const { appearing, ...others } = phrases

/** What a phrase can begin with; a word that is not among them can only be a stitch. */
const starts = startsIn([
  ...Object.values(others).flat(),
  ...appearing.filter((phrase) => !/^(?:knit|purl)/.test(phrase)),
  ...referenceStarts,
])

const readStar: Reader = (parsing) => {
  const { cursor, stars } = parsing
  const start = cursor.at
  const mark = cursor.text()
  if (!mark.startsWith('*')) return false
  cursor.take(1, 'repeat')
  const copies = stars.star(mark, cursor.rangeFrom(start)) && readCopies(cursor, false)
  if (copies) stars.repeatClosed(copies)
  return true
}

const readPause: Reader = ({ cursor, stars }) => {
  const text = cursor.text()
  if (!pauses.has(text) || (text === '-' && cursor.isNumber(1))) return false
  if (text === '.' || text === ';') stars.sentenceEnds()
  cursor.take(1, 'punctuation')
  return true
}

/** "(RS)", "RS": the side that a needle row shows. */
const readSide: Reader = ({ cursor, found }) => {
  if (cursor.eat(phrases.rights, 'word')) found.side ??= 'right'
  else if (cursor.eat(phrases.wrongs, 'word')) found.side ??= 'wrong'
  else return false
  return true
}

/** "*k2, p1; end with k3": what goes back to the asterisk is left out. */
const readEnd: Reader = ({ cursor, stars }) => {
  const start = cursor.at
  if (!stars.isOpen || !readEnding(cursor)) return false
  stars.repeatFrom('*', { kind: 'until', last: 0, ending: true }, cursor.rangeFrom(start))
  return true
}

const readSaid: Reader = ({ cursor, found }) => {
  const said = readCount(cursor)
  if (said) found.said.push(said)
  return said !== null
}

const readSaidInBrackets: Reader = ({ cursor, found }) => {
  const said = readCountInBrackets(cursor)
  if (said) found.said.push(...said)
  return said !== null
}

const readBrackets: Reader = (parsing) => {
  const { cursor } = parsing
  const start = cursor.at
  if (!closing.has(cursor.text())) return false
  if (parsing.depth > readLimits.depth) {
    parsing.remark(tooDeep(cursor.rangeFrom(start)))
    cursor.take(1, 'unknown')
    return true
  }
  cursor.take(1, 'punctuation')
  if (readRepeat(parsing)) {
    cursor.eat('.', 'punctuation')
    if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
    return true
  }
  const opening = cursor.rangeFrom(start)
  const items = parsing.list(() => {
    while (!cursor.done && !isClosing(cursor.text())) readItem(parsing)
  })
  if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
  else parsing.remark(bracketOpen(opening))
  if (cursor.eat(phrases.sameStitch, 'word'))
    return parsing.put(...readInOne(parsing, items, start))
  const copies = readCopies(cursor, true) ?? once
  if (items.length > 0) parsing.put(groupItem(items, copies, cursor.rangeFrom(start)))
  return true
}

/** How often what was just read is worked. `exact`: a bare number is a number of times in all. */
function readCopies(cursor: Cursor, exact: boolean): Copies | null {
  const often = readTimes(cursor)
  if (!often) return readUntil(cursor)
  return often.kind === 'bare' && !exact ? often : inAll(often)
}

/** "rep from * to end", "repeat from * to * 3 times", "rep to end"; or rows that are named. */
const readRepeat: Reader = (parsing) => {
  const { cursor, stars, found } = parsing
  const reference = readReference(cursor)
  if (reference) {
    found.reference ??= reference
    return true
  }
  const start = cursor.at
  const mark = cursor.mark()
  if (!cursor.eat('rep|repeat|repeating', 'repeat')) return false
  const starred = cursor.eat('from|between? the? *|**|***', 'repeat')
  const star = starred ? cursor.text(-1) : null
  if (starred) cursor.eat('to|and *|**|***', 'repeat')
  else cursor.eat(phrases.theseStitches, 'repeat')
  if (cursor.text() === ',') cursor.take(1, 'punctuation')
  let copies = readCopies(cursor, false)
  if (!copies && starred) copies = { kind: 'until', last: 0, ending: readEnding(cursor) }
  if (!copies) {
    cursor.back(mark)
    return false
  }
  const range = cursor.rangeFrom(start)
  const missing = star ? stars.repeatFrom(star, copies, range) : stars.repeatAll(copies, range)
  if (missing) parsing.remark(missing)
  return true
}

const readFill: Reader = ({ cursor, stars }) => {
  const start = cursor.at
  const until = readUntil(cursor)
  if (until) stars.fill(until, cursor.rangeFrom(start))
  return until !== null
}

const readUnknown: Reader = (parsing) => {
  const { cursor, found } = parsing
  const start = cursor.at
  if (cursor.piece()?.kind === 'sign') {
    cursor.take(1, 'punctuation')
    return true
  }
  cursor.take(cursor.clusterEnd() - start, 'unknown')
  const range = cursor.rangeFrom(start)
  const word = parsing.quote(start)
  let number = Number(/\d{1,4}/.exec(word)?.[0] ?? 0)
  // Its number says how often it is worked.
  if (cursor.isNumber() && /^(?:[.,;)\]*]|)$/.test(cursor.text(1))) {
    number = cursor.piece()?.value ?? number
    cursor.take(1, 'unknown')
  }
  found.unknown++
  parsing.remark(() => unknownWord(word, range))
  return parsing.put({ do: 'gap', number, range })
}

/** Words that say nothing a chart would show. */
const note =
  (list: readonly string[]): Reader =>
  ({ cursor }) =>
    cursor.eat(list, 'word')

const stitches: readonly Reader[] = [readStitch, readSaid, note(phrases.fillers), readUnknown]
const all: readonly Reader[] = [
  readPause,
  readSide,
  readWraps,
  readDoubled,
  note(phrases.lastRows),
  readEnd,
  note(phrases.aboutLength),
  readSaidInBrackets,
  readBrackets,
  readAppearing,
  readFabric,
  readRows,
  readRepeat,
  readTurn,
  readNamedPegs,
  readFill,
  ...stitches,
]

/** One item, with recovery: a word that is not known costs that word. */
function readItem(parsing: Parsing): void {
  const { cursor } = parsing
  if (readStar(parsing) || (cursor.text(1) === 'the' && readAppearing(parsing))) return
  const piece = cursor.piece()
  const isStitch = piece?.kind === 'word' && !starts.has(piece.text) && piece.value < 0
  for (const read of isStitch ? stitches : all) if (read(parsing)) return
}
