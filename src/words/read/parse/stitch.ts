import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Copies, PegsItem } from '../nodes'
import { askCross, askDoubled, noStitch, standsIn } from '../remarks/parsing'
import type { TextRange } from '../reading'
import type { Meaning } from '../terms/spellings'
import type { Cursor } from './cursor'
import { cutShort } from './cut'
import { inAll, readTimes, readUntil } from './extents'
import { groupItem, itemOf, mayFill, untilEnd } from './items'
import type { Parsing, Reader } from './parsing'
import * as phrases from './phrases'
import { readBarePegs, readPegs } from './turns'

/** A stitch with its number, and what stands behind it: "k2", "knit all pegs", "k2tog twice". */
export const readStitch: Reader = (parsing) => {
  const { cursor } = parsing
  const { spellings } = parsing.settings
  const start = cursor.at
  const mark = cursor.mark()
  const first = cursor.piece()
  let found = spellings.find(cursor.pieces, start)
  let before: number | null = null
  // "5 k", "2 plain"
  if (!found && first?.kind === 'number' && !first.ordinal) {
    found = spellings.find(cursor.pieces, start + 1)
    if (found) {
      before = first.value
      cursor.take(1, 'number')
    }
  }
  if (!found) return false
  cursor.take(found.end - cursor.at, 'stitch')
  found = { ...found, meaning: cutShort(found.meaning, cursor) }
  const name = cursor.rangeFrom(start)
  if (stopsAt(cursor)) {
    remarkOn(found.meaning, start, name, parsing)
    return parsing.put(itemOf(found.meaning, before, name))
  }
  if (readPegsOf(found.meaning, start, parsing)) return true
  const count = before ?? readCount(parsing)
  if (cursor.at < cursor.clusterEnd(start) && !goesOn(parsing)) {
    cursor.back(mark)
    return false
  }
  if (found.meaning.is === 'choice' && found.meaning.rule === 'ask-ds')
    cursor.eat(phrases.asOne, 'word')
  const said = cursor.rangeFrom(start)
  const meaning = slipped(found.meaning, cursor)
  remarkOn(meaning, start, name, parsing)
  if (count !== null && cursor.eat(phrases.rowWords, 'count')) {
    parsing.found.rows = Math.max(1, count)
    return parsing.put(groupItem([itemOf(meaning, 1, name)], untilEnd, said))
  }
  const item = itemOf(meaning, count, said)
  const copies = copiesAfter(
    parsing,
    count === null && item.do === 'stitch' && mayFill(item.stitch),
  )
  return parsing.put(copies ? groupItem([item], copies, cursor.rangeFrom(start)) : item)
}

/** Nothing that is said of a stitch stands behind a comma, a full stop or the end. */
const stopsAt = (cursor: Cursor): boolean => {
  const text = cursor.text()
  return text === ',' || text === '.' || text === ''
}

function remarkOn(meaning: Meaning, start: number, name: TextRange, parsing: Parsing): void {
  if (meaning.is === 'cross') parsing.remark(askCross(parsing.quote(start), meaning, name))
  if (meaning.is === 'lacking' && !meaning.twin)
    parsing.remark(standsIn(meaning.name, meaning.stitch, name))
  if (meaning.is === 'none') parsing.remark(noStitch(meaning.name, name))
}

/** "purl pegs 3-6", "knit from 12 to 1", "knit 7-24" */
function readPegsOf(meaning: Meaning, start: number, parsing: Parsing): boolean {
  const { cursor } = parsing
  const doubled = meaning.is === 'choice' && meaning.rule === 'ask-ds'
  const stitch = doubled
    ? standardVocabulary.withRole('knit')
    : meaning.is === 'stitch'
      ? meaning.stitch
      : null
  if (stitch?.takes !== 1) return false
  const named = cursor.looksAt('from? pegs|peg #') || cursor.looksAt('from #')
  const list = named ? readPegs(cursor) : readBarePegs(cursor)
  const range = cursor.rangeFrom(start)
  parsing.put(...list.map((pegs): PegsItem => ({ do: 'pegs', stitch, ...pegs, range })))
  if (list.length > 0 && doubled) parsing.remark(askDoubled(parsing.quote(start), range))
  return list.length > 0
}

/** After a stitch: "all pegs" and "to end" where it may fill, "twice", "4 times". */
function copiesAfter({ cursor, stars }: Parsing, fills: boolean): Copies | null {
  if (fills && cursor.eat(phrases.allPegs, 'repeat')) {
    readUntil(cursor)
    return untilEnd
  }
  cursor.eat(phrases.loopWords, 'word')
  const until = fills ? readUntil(cursor) : null
  if (until) stars.sentenceEnds()
  const often = until ? null : readTimes(cursor)
  return often ? inAll(often) : until
}

/** The number after a stitch: "k2", "knit two", "knit next 3 pegs"; not "twice" or "3 times". */
function readCount({ cursor, settings: { spellings } }: Parsing): number | null {
  if (cursor.eat('of|in? the? next st|stitch|loop|peg', 'word')) return 1
  const mark = cursor.mark()
  cursor.eat('the? next', 'word')
  const piece = cursor.piece()
  if (
    !piece ||
    piece.value < 0 ||
    piece.ordinal ||
    cursor.looksAt('# times|time|x|more|additional|further|/') ||
    (!piece.glued && spellings.find(cursor.pieces, cursor.at))
  ) {
    cursor.back(mark)
    return null
  }
  cursor.take(1, 'number')
  return piece.value
}

/** Does what stands glued behind a stitch begin another one ("k2p2")? */
const goesOn = ({ cursor, settings: { spellings } }: Parsing): boolean =>
  spellings.find(cursor.pieces, cursor.at) !== null || cursor.looksAt('x|times|time|st|sts')

/** "sl 2 wyif": where the yarn is may stand behind the number. */
function slipped(meaning: Meaning, cursor: Cursor): Meaning {
  if (meaning.is !== 'stitch' || meaning.stitch.role !== 'slip') return meaning
  if (cursor.eat(phrases.inFront, 'stitch'))
    return { is: 'stitch', stitch: standardVocabulary.withRole('slip in front') }
  if (!cursor.looksAt('pwise|purlwise|wyib|with')) return meaning
  const back = !cursor.looksAt('pwise|purlwise') || cursor.looksAt('pwise|purlwise wyib')
  return cursor.eat(phrases.atBack, 'stitch') && back ? { ...meaning, atBack: true } : meaning
}
