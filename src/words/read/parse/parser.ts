import { stitchOf } from '../../../stitches/vocabulary'
import { readLimits } from '../limits'
import type { Body, Copies, Item, Reference, RelativeRemark, Said } from '../nodes'
import type { TextRange } from '../reading'
import type { Meaning, Spellings } from '../spellings'
import { askCross, noStitch, tooDeep, unknownWord } from '../remarks/parsing'
import { readCount, readCountInBrackets } from './counts'
import type { Cursor } from './cursor'
import { readEnding, readTimes, readUntil } from './extents'
import { groupItem, itemOf, mayFill, once, untilEnd } from './items'
import { readLength, readReference } from './references'
import { Stars } from './stars'
import { readPegs, readTurn } from './turns'

const pauses = new Set([',', ';', '.', ':', '|', '-', '/'])
const closing: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' }
const loops = 'next|following? st|sts|stitch|stitches|peg|pegs|loop|loops'
const rows = 'rnd|rnds|round|rounds|row|rows'

/** Words that say nothing a chart would show. */
const fillers: readonly string[] = [
  'then',
  'and',
  'next',
  'the',
  'work',
  'pm',
  'sm',
  'slm',
  'place|slip|remove marker|m',
  'bor',
  'join the? yarn?',
  'with colour|color? mc|cc|a|b|c|d',
  'wyib|ybk|yb',
  'at the? same time',
  'rs|ws facing',
]

/** Recursive descent over the words of one row, with recovery: a word not known costs that word. */
export class Parser {
  readonly said: Said[] = []
  readonly remarks: RelativeRemark[] = []
  reference: Reference | null = null
  rows = 1
  measured: TextRange | null = null
  workEven: TextRange | null = null
  side: Body['side'] = null
  unknown = 0
  #depth = 0

  constructor(
    readonly cursor: Cursor,
    private readonly spellings: Spellings,
    private readonly text: string,
  ) {}

  readAll(): Item[] {
    const items: Item[] = []
    while (!this.cursor.done) {
      items.push(...this.#readList(null))
      // A closing bracket that nothing opened.
      if (!this.cursor.done) this.cursor.take(1, 'punctuation')
    }
    return items
  }

  /** Items up to a closing bracket or the end; stars are paired within the list. */
  #readList(close: string | null): Item[] {
    const { cursor } = this
    const stars = new Stars()
    while (!cursor.done && cursor.text() !== close && !(close && isClosing(cursor.text()))) {
      if (close === null && isClosing(cursor.text())) break
      this.#readItem(stars)
    }
    const open = stars.close()
    if (open) this.remarks.push(open)
    return stars.items
  }

  #readItem(stars: Stars): void {
    const { cursor } = this
    const text = cursor.text()
    if (text.startsWith('*')) return this.#readStar(stars)
    if (pauses.has(text) && !cursor.looksAt('=|- #')) {
      if (text === '.' || text === ';') stars.sentenceEnds()
      return cursor.take(1, 'punctuation')
    }
    if (this.#readSide()) return
    const counts = readCountInBrackets(cursor)
    if (counts) return void this.said.push(...counts)
    if (closing[text]) return this.#readBrackets(stars)
    if (this.#readRepeat(stars)) return
    const reference = readReference(cursor)
    if (reference) return void (this.reference ??= reference)
    if (this.#readRows()) return
    const turn = readTurn(cursor)
    if (turn) {
      stars.items.push(turn)
      return stars.sentenceEnds()
    }
    const pegs = readPegs(cursor)
    if (pegs) return void stars.items.push({ do: 'pegs', stitch: null, ...pegs })
    const start = cursor.at
    const until = readUntil(cursor)
    if (until) return stars.fill(until, cursor.rangeFrom(start))
    if (this.#readStitch(stars)) return
    const said = readCount(cursor)
    if (said) return void this.said.push(said)
    if (fillers.some((phrase) => cursor.eat(phrase, 'word'))) return
    this.#readUnknown(stars)
  }

  #readStar(stars: Stars): void {
    const { cursor } = this
    const start = cursor.at
    const mark = cursor.text()
    cursor.take(1, 'repeat')
    if (!stars.star(mark, cursor.rangeFrom(start))) return
    const copies = this.#copies(false)
    if (copies) stars.repeatClosed(copies)
  }

  /** "(RS)", "RS": the side that a needle row shows. */
  #readSide(): boolean {
    const { cursor } = this
    const right = ['( rs )', 'rs :?', '( right side ) ']
    const wrong = ['( ws )', 'ws :?', '( wrong side )']
    if (
      cursor.eatOne(
        right.map((one) => one.trim()),
        'word',
      )
    )
      this.side ??= 'right'
    else if (cursor.eatOne(wrong, 'word')) this.side ??= 'wrong'
    else return false
    return true
  }

  #readBrackets(stars: Stars): void {
    const { cursor } = this
    const start = cursor.at
    const close = closing[cursor.text()] ?? ')'
    if (this.#depth >= readLimits.depth) {
      this.remarks.push(tooDeep(cursor.rangeFrom(start)))
      return cursor.take(1, 'unknown')
    }
    cursor.take(1, 'punctuation')
    if (this.#readRepeat(stars)) {
      cursor.eat('.', 'punctuation')
      cursor.eat(close, 'punctuation')
      return
    }
    this.#depth++
    const items = this.#readList(close)
    this.#depth--
    if (isClosing(cursor.text())) cursor.take(1, 'punctuation')
    if (cursor.eatOne([`in|into the? ${loops}`, 'all? in|into same|one|1 st|stitch|peg'], 'word')) {
      this.remarks.push(noStitch(this.#said(start), cursor.rangeFrom(start)))
      return void stars.items.push({ do: 'gap', range: cursor.rangeFrom(start) })
    }
    const copies = this.#copies(true) ?? once
    if (items.length > 0) stars.items.push(groupItem(items, copies, cursor.rangeFrom(start)))
  }

  /** How often what was just read is worked. `exact`: a bare number is a number of times in all. */
  #copies(exact: boolean): Copies | null {
    const { cursor } = this
    const often = readTimes(cursor)
    if (!often) return readUntil(cursor)
    if (often.kind === 'more') return { kind: 'fixed', times: often.times + 1 }
    if (often.kind === 'all' || exact)
      return { kind: 'fixed', times: 'times' in often ? often.times : 1 }
    if (often.kind === 'bare') return { kind: 'bare', times: often.times, said: often.said }
    return null
  }

  /** "rep from * to end", "repeat from * to * 3 times", "rep to end", "repeat 5 more times". */
  #readRepeat(stars: Stars): boolean {
    const { cursor } = this
    const start = cursor.at
    const { known } = cursor
    const kept = cursor.tokens.length
    if (!cursor.eat('rep|repeat|repeating', 'repeat')) return false
    const starred = cursor.eat('from|between? the? *|**|***', 'repeat')
    const mark = starred ? (cursor.pieces[cursor.at - 1]?.text ?? '*') : null
    if (starred) cursor.eat('to|and *|**|***', 'repeat')
    else cursor.eatOne(['this|these sts|stitches|pegs|section', 'this', 'in brackets'], 'repeat')
    if (cursor.text() === ',') cursor.take(1, 'punctuation')
    let copies = this.#copies(false)
    if (!copies && starred) copies = { kind: 'until', last: 0, ending: readEnding(cursor) }
    if (!copies) {
      cursor.back(start, kept, known)
      return false
    }
    const range = cursor.rangeFrom(start)
    if (mark) {
      const missing = stars.repeatFrom(mark, copies, range)
      if (missing) this.remarks.push(missing)
    } else stars.repeatAll(copies, range)
    return true
  }

  /** "for 5 rows", "for 5 cm", "work even". */
  #readRows(): boolean {
    const { cursor } = this
    const start = cursor.at
    if (cursor.eat(`for # more? ${rows}`, 'count')) {
      this.rows = Math.max(1, cursor.numbers[0]?.value ?? 1)
      return true
    }
    if (readLength(cursor)) {
      this.measured = cursor.rangeFrom(start)
      return true
    }
    const even = [
      'work|knit|purl|cont|continue even|straight',
      'work? in patt|pattern|pat as? set|est|established?',
      'work? as set|est|established',
      'cont|continue as? set|est|established',
    ]
    if (!cursor.eatOne(even, 'word')) return false
    this.workEven = cursor.rangeFrom(start)
    if (cursor.eat(`# ${rows}`, 'count')) this.rows = Math.max(1, cursor.numbers[0]?.value ?? 1)
    return true
  }

  #readStitch(stars: Stars): boolean {
    const { cursor } = this
    const start = cursor.at
    const { known } = cursor
    const kept = cursor.tokens.length
    const cluster = cursor.clusterEnd()
    const first = cursor.piece()
    let found = this.spellings.find(cursor.pieces, start)
    let before: number | null = null
    // "5 k", "2 plain"
    if (!found && first?.kind === 'number' && !first.ordinal) {
      found = this.spellings.find(cursor.pieces, start + 1)
      if (found) {
        before = first.value
        cursor.take(1, 'number')
      }
    }
    if (!found) return false
    cursor.take(found.end - cursor.at, 'stitch')
    const name = cursor.rangeFrom(start)
    cursor.eat('the? next', 'word')
    const pegs = cursor.looksAt('pegs|peg|from #') ? readPegs(cursor) : null
    if (pegs && found.meaning.is === 'stitch') {
      const range = cursor.rangeFrom(start)
      stars.items.push({ do: 'pegs', stitch: found.meaning.stitch, ...pegs, range })
      return true
    }
    const count = before ?? this.#count()
    if (cursor.at < cluster && !this.#goesOn()) {
      cursor.back(start, kept, known)
      return false
    }
    const said = cursor.rangeFrom(start)
    const meaning = this.#slipped(found.meaning)
    if (meaning.is === 'cross') this.remarks.push(askCross(this.#said(start), meaning, name))
    if (meaning.is === 'none') this.remarks.push(noStitch(meaning.name, name))
    if (count !== null && cursor.eat(rows, 'count')) {
      this.rows = Math.max(1, count)
      stars.items.push(groupItem([itemOf(meaning, 1, name)], untilEnd, said))
    } else this.#placeStitch(stars, itemOf(meaning, count, said), count === null, start)
    return true
  }

  /** After a stitch without a number: "all pegs", "to end", "twice". */
  #placeStitch(stars: Stars, item: Item, bare: boolean, start: number): void {
    const { cursor } = this
    const fills = bare && item.do === 'stitch' && mayFill(item.stitch)
    if (
      fills &&
      cursor.eatOne(
        ['all|every|each|rem|remaining other? sts|stitches|peg|pegs', 'all', 'the? rest'],
        'repeat',
      )
    ) {
      readUntil(cursor)
      return void stars.items.push(groupItem([item], untilEnd, cursor.rangeFrom(start)))
    }
    cursor.eat(loops, 'word')
    if (fills) {
      const until = readUntil(cursor)
      if (until) {
        stars.items.push(groupItem([item], until, cursor.rangeFrom(start)))
        return stars.sentenceEnds()
      }
    }
    const times = this.#timesAfterStitch()
    stars.items.push(times ? groupItem([item], times, cursor.rangeFrom(start)) : item)
  }

  /** "k2tog twice", "p2tog 4 times" */
  #timesAfterStitch(): Copies | null {
    const { cursor } = this
    const { at, known } = cursor
    const kept = cursor.tokens.length
    const often = readTimes(cursor)
    if (often && 'times' in often && often.kind !== 'more')
      return { kind: 'fixed', times: often.times }
    if (often && often.kind === 'more') return { kind: 'fixed', times: often.times + 1 }
    cursor.back(at, kept, known)
    return null
  }

  /** The number after a stitch: "k2", "knit two", "knit next 3 pegs"; not "twice" or "3 times". */
  #count(): number | null {
    const { cursor } = this
    if (!cursor.isNumber() || cursor.piece()?.ordinal) return null
    if (cursor.looksAt('# times|time|x|more|additional|further|/')) return null
    const glued = cursor.piece()?.glued === true
    if (!glued && this.spellings.find(cursor.pieces, cursor.at)) return null
    const value = cursor.piece()?.value ?? 1
    cursor.take(1, 'number')
    return value
  }

  /** Does what stands glued behind a stitch begin another one ("k2p2")? */
  #goesOn(): boolean {
    return (
      this.spellings.find(this.cursor.pieces, this.cursor.at) !== null ||
      this.cursor.looksAt('x #|times|time|x|st|sts')
    )
  }

  /** "sl 2 wyif": where the yarn is may stand behind the number. */
  #slipped(meaning: Meaning): Meaning {
    if (meaning.is !== 'stitch' || meaning.stitch.id !== 'sl') return meaning
    const { cursor } = this
    if (cursor.eatOne(['pwise|purlwise', 'wyif|yif', 'with yarn in front'], 'stitch')) {
      const last = cursor.pieces[cursor.at - 1]?.text ?? ''
      if (last.startsWith('p') && !cursor.eatOne(['wyif|yif', 'with yarn in front'], 'stitch'))
        return meaning
      return { is: 'stitch', stitch: stitchOf('slf') }
    }
    if (!cursor.eatOne(['wyib', 'with yarn in back', 'with yarn at back'], 'stitch')) return meaning
    return { ...meaning, atBack: true }
  }

  #readUnknown(stars: Stars): void {
    const { cursor } = this
    const start = cursor.at
    const piece = cursor.piece()
    if (piece?.kind === 'sign') return cursor.take(1, 'punctuation')
    cursor.take(cursor.clusterEnd() - start, 'unknown')
    const range = cursor.rangeFrom(start)
    this.unknown++
    stars.items.push({ do: 'gap', range })
    this.remarks.push(unknownWord(this.text.slice(range.from, range.to), range))
  }

  #said(start: number): string {
    const { from, to } = this.cursor.rangeFrom(start)
    return this.text.slice(from, to)
  }
}

const isClosing = (text: string): boolean => text === ')' || text === ']' || text === '}'
