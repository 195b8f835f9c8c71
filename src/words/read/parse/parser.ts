import { standardVocabulary } from '../../../stitches/vocabulary'
import { closing } from '../lines/lex'
import { readLimits } from '../limits'
import type { Copies, Item } from '../nodes'
import { bracketOpen, tooDeep, unknownWord } from '../remarks/parsing'
import { readAppearing } from './appearing'
import { readCount, readCountInBrackets } from './counts'
import { startsIn } from './cursor'
import { readDoubled } from './doubled'
import { readEnding, readTimes, readUntil } from './extents'
import { readFabric } from './fabrics'
import { readInOne } from './inOne'
import { groupItem, once, stitchItem, untilEnd } from './items'
import type { Parsing } from './parsing'
import * as phrases from './phrases'
import { readLength, readReference, referenceStarts } from './references'
import { Stars } from './stars'
import { readRowsOf } from './rowsOf'
import { readStitch } from './stitch'
import { readPegs, readTurn } from './turns'
import { readWraps } from './wraps'

const pauses = new Set([',', ';', '.', ':', '|', '-', '/'])
const isClosing = (text: string): boolean => text === ')' || text === ']' || text === '}'

const { appearing, ...others } = phrases

/** What a phrase can begin with; a word that is not among them can only be a stitch. */
const starts = startsIn([
  ...Object.values(others).flat(),
  ...appearing.filter((phrase) => !/^(?:knit|purl)/.test(phrase)),
  ...referenceStarts,
])

/** Recursive descent over the words of one row, with recovery: a word not known costs that word. */
export class Parser {
  #depth = 0

  constructor(private readonly parsing: Parsing) {}

  readAll(): Item[] {
    const { cursor } = this.parsing
    const stars = new Stars()
    while (!cursor.done) {
      // A closing bracket that nothing opened is passed over.
      if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
      else this.#readItem(stars)
    }
    return this.#close(stars)
  }

  /** Items up to a closing bracket or the end; stars are paired within the list. */
  #readList(): Item[] {
    const { cursor } = this.parsing
    const stars = new Stars()
    while (!cursor.done && !isClosing(cursor.text())) this.#readItem(stars)
    return this.#close(stars)
  }

  #close(stars: Stars): Item[] {
    const open = stars.close()
    if (open) this.parsing.remark(open)
    return stars.items
  }

  #readItem(stars: Stars): void {
    const { cursor, said } = this.parsing
    const text = cursor.text()
    if (text.startsWith('*')) return this.#readStar(stars)
    const piece = cursor.piece()
    if (cursor.text(1) === 'the' && readAppearing(this.parsing, stars)) return
    if (piece?.kind === 'word' && !starts.has(text) && piece.value < 0)
      return this.#readStitchOr(stars)
    if (pauses.has(text) && !(text === '-' && cursor.isNumber(1))) {
      if (text === '.' || text === ';') stars.sentenceEnds()
      return cursor.take(1, 'punctuation')
    }
    if (this.#readSide()) return
    const wraps = readWraps(cursor)
    if (wraps) return void stars.items.push(...wraps)
    if (readDoubled(this.parsing, stars) || cursor.eatOne(phrases.lastRows, 'word')) return
    if (stars.isOpen && this.#readEnd(stars)) return
    if (cursor.eatOne(phrases.aboutLength, 'word')) return
    const counts = readCountInBrackets(cursor)
    if (counts) {
      for (const count of counts) said.push(count)
      return
    }
    if (closing.has(text)) return this.#readBrackets(stars)
    if (this.#readRows(stars) || this.#readRepeat(stars)) return
    if (this.#readTurn(stars)) return
    const pegs = readPegs(cursor)
    if (pegs.length > 0) {
      for (const one of pegs) stars.items.push({ do: 'pegs', stitch: null, ...one })
      return
    }
    const start = cursor.at
    const until = readUntil(cursor)
    if (until) return stars.fill(until, cursor.rangeFrom(start))
    this.#readStitchOr(stars)
  }

  #readStitchOr(stars: Stars): void {
    const { parsing } = this
    if (readStitch(parsing, stars)) return
    const said = readCount(parsing.cursor)
    if (said) return void parsing.said.push(said)
    if (!parsing.cursor.eatOne(phrases.fillers, 'word')) this.#readUnknown(stars)
  }

  #readStar(stars: Stars): void {
    const { cursor } = this.parsing
    const start = cursor.at
    const mark = cursor.text()
    cursor.take(1, 'repeat')
    if (!stars.star(mark, cursor.rangeFrom(start))) return
    const copies = this.#copies(false)
    if (copies) stars.repeatClosed(copies)
  }

  /** "(RS)", "RS": the side that a needle row shows. */
  #readSide(): boolean {
    const { parsing } = this
    if (parsing.cursor.eatOne(phrases.rights, 'word')) parsing.side ??= 'right'
    else if (parsing.cursor.eatOne(phrases.wrongs, 'word')) parsing.side ??= 'wrong'
    else return false
    return true
  }

  #readBrackets(stars: Stars): void {
    const { parsing } = this
    const { cursor } = parsing
    const start = cursor.at
    if (this.#depth >= readLimits.depth) {
      parsing.remark(tooDeep(cursor.rangeFrom(start)))
      return cursor.take(1, 'unknown')
    }
    cursor.take(1, 'punctuation')
    if (this.#readRepeat(stars)) {
      cursor.eat('.', 'punctuation')
      if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
      return
    }
    this.#depth++
    const items = this.#readList()
    this.#depth--
    if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
    else
      parsing.remark(
        bracketOpen({ from: cursor.pieces[start]?.from ?? 0, to: cursor.pieces[start]?.to ?? 0 }),
      )
    if (cursor.eatOne(phrases.sameStitch, 'word')) {
      stars.items.push(...readInOne(parsing, items, start))
      return
    }
    const copies = this.#copies(true) ?? once
    if (items.length > 0) stars.items.push(groupItem(items, copies, cursor.rangeFrom(start)))
  }

  /** How often what was just read is worked. `exact`: a bare number is a number of times in all. */
  #copies(exact: boolean): Copies | null {
    const { cursor } = this.parsing
    const often = readTimes(cursor)
    if (!often) return readUntil(cursor)
    if (often.kind === 'more') return { kind: 'fixed', times: often.times + 1 }
    if (often.kind === 'all') return { kind: 'fixed', times: often.times }
    if (often.kind !== 'bare') return null
    const { times, said } = often
    return exact ? { kind: 'fixed', times } : { kind: 'bare', times, said }
  }

  /** "rep from * to end", "repeat from * to * 3 times", "rep to end"; or rows that are named. */
  #readRepeat(stars: Stars): boolean {
    const { parsing } = this
    const { cursor } = parsing
    const reference = readReference(cursor)
    if (reference) {
      parsing.reference ??= reference
      return true
    }
    const start = cursor.at
    const mark = cursor.mark()
    if (!cursor.eat('rep|repeat|repeating', 'repeat')) return false
    const starred = cursor.eat('from|between? the? *|**|***', 'repeat')
    const star = starred ? (cursor.pieces[cursor.at - 1]?.text ?? '*') : null
    if (starred) cursor.eat('to|and *|**|***', 'repeat')
    else cursor.eatOne(phrases.theseStitches, 'repeat')
    if (cursor.text() === ',') cursor.take(1, 'punctuation')
    let copies = this.#copies(false)
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

  /** "*k2, p1; end with k3": what goes back to the asterisk is left out. */
  #readEnd(stars: Stars): boolean {
    const { cursor } = this.parsing
    const start = cursor.at
    if (!readEnding(cursor)) return false
    stars.repeatFrom('*', { kind: 'until', last: 0, ending: true }, cursor.rangeFrom(start))
    return true
  }

  /** "for 5 rows", "for 5 cm", "in st st", "work even". */
  #readRows(stars: Stars): boolean {
    const { parsing } = this
    const { cursor } = parsing
    if (readAppearing(parsing, stars) || readFabric(parsing, stars)) return true
    if (cursor.looksAtOne(phrases.inStitches)) {
      cursor.take(1, 'word')
      return true
    }
    const start = cursor.at
    const knit = cursor.eatOne(phrases.stockinette, 'stitch')
    if (knit || cursor.eatOne(phrases.reversed, 'stitch')) {
      const range = cursor.rangeFrom(start)
      stars.items.push(
        groupItem(
          [stitchItem(standardVocabulary.withRole(knit ? 'knit' : 'purl'), 1, range)],
          untilEnd,
          range,
        ),
      )
      return true
    }
    if (cursor.eatOne(phrases.rowsLong, 'count')) {
      parsing.rows = Math.max(1, cursor.numbers[0]?.value ?? 1)
      readRowsOf(parsing, stars)
      return true
    }
    if (readLength(cursor)) {
      parsing.measured = cursor.rangeFrom(start)
      return true
    }
    const set = cursor.eatOne(phrases.asSet, 'word')
    if (!set && !cursor.eatOne(phrases.even, 'word')) return false
    parsing.workEven = { range: cursor.rangeFrom(start), set: Boolean(set) }
    if (cursor.eat(`# ${phrases.rowWords}`, 'count'))
      parsing.rows = Math.max(1, cursor.numbers[0]?.value ?? 1)
    return true
  }

  #readTurn(stars: Stars): boolean {
    const turn = readTurn(this.parsing.cursor)
    if (!turn) return false
    stars.items.push(turn)
    stars.sentenceEnds()
    return true
  }

  #readUnknown(stars: Stars): void {
    const { parsing } = this
    const { cursor } = parsing
    const start = cursor.at
    if (cursor.piece()?.kind === 'sign') return cursor.take(1, 'punctuation')
    cursor.take(cursor.clusterEnd() - start, 'unknown')
    const range = cursor.rangeFrom(start)
    const word = parsing.quote(start)
    let number = Number(/\d{1,4}/.exec(word)?.[0] ?? 0)
    // Its number says how often it is worked.
    if (cursor.isNumber() && /^(?:[.,;)\]*]|)$/.test(cursor.text(1))) {
      number = cursor.piece()?.value ?? number
      cursor.take(1, 'unknown')
    }
    parsing.unknown++
    stars.items.push({ do: 'gap', number, range })
    parsing.remark(() => unknownWord(word, range))
  }
}
