import { figuresOf, readLimits } from '../limits'
import { foldMiscounts } from './cascade'
import { evenRow } from './even'
import { Looks } from '../loops/looks'
import type { Memory } from '../memory'
import type { Body, Head, Named, Said } from '../nodes'
import type { Statement } from '../lines/outline'
import { lookOf, type LoomThen } from '../loops/place'
import type { ReadBand, ReadEdge, ReadRow, Remark } from '../reading'
import { quoted, Remarker } from './remarker'
import * as say from '../remarks/rows'
import { settleTimes } from './repeats'
import { makeRow, type Words } from './rows'
import { ToldRows } from './toldRows'
import { Waiting } from './waiting'
import { onPegs } from '../piece/inWork'
import { WholePiece } from '../piece/wholePiece'
import {
  inCycle,
  isPlain,
  isWrong,
  lastOf,
  lastRow,
  letterOf,
  nameOf,
  rowsFromTo,
  turnsOrNames,
  unitOf,
} from './wordsOfRows'
import { workBody, type Resolved } from '../loops/work'

/** Turns statements into real rows, one after the other on one loom. */
export class Resolver {
  readonly rows: ReadRow[] = []
  readonly bands: ReadBand[] = []
  readonly edges: ReadEdge[] = []
  readonly #looks: Looks
  readonly #remarker: Remarker
  readonly #waiting = new Waiting<Words>()
  readonly #told = new ToldRows()
  /** The last row that left as many loops as it took: what "work even" goes on with. */
  #steady: Words | null = null
  #place: LoomThen
  /** The number of the last row, as the words count. */
  #number = 0
  #work: number = readLimits.work
  #full = false
  /** The number of the row told last; null where it has none of its own, or begins a section. */
  #counted: number | null = null
  /** The words at which a number that is left out was said last: once will do. */
  #gapIn: Words | null = null
  readonly #piece: WholePiece

  constructor(
    private readonly memory: Memory,
    /** Are there German turns, so that "ds" is plain? */
    private readonly german: boolean,
    /** Is a number that is left out worth a word? Not where rows of other sizes are left out. */
    private readonly gaps: boolean,
  ) {
    this.#place = memory.places.start(memory.settings.pegs)
    this.#looks = new Looks(memory)
    this.#remarker = new Remarker(memory.settings.shape)
    this.#piece = new WholePiece(memory, {
      rows: () => this.rows.length,
      full: () => this.#full,
      place: () => this.#place,
      put: (place) => (this.#place = place),
      again: ({ words, label }, order, time) => {
        this.#workRow(words, order, label, time, false)
        this.#number = Number(label) || this.#number + 1
      },
      band: (band) => this.bands.push(band),
      edge: (edge) => this.edges.push(edge),
      remark: (remark, from) => this.#remarker.add(remark, from),
    })
  }

  get remarks(): readonly Remark[] {
    const { remarks, miscounts } = this.#remarker
    return foldMiscounts(remarks, miscounts, this.rows, this.#remarker.names)
  }

  /** A statement of rows. `next`: the number of the next head, if it is known. */
  add(statement: Statement, body: Body, next: number | null): void {
    if (this.#full) return
    const { head, from, text } = statement
    const ring = this.memory.settings.shape === 'ring'
    const kind = head?.kind ?? (ring && !turnsOrNames(body) ? 'round' : 'row')
    const { range, section, only, order } = statement
    const side = head?.side ?? body.side
    // Said one by one: to spread the statement costs a third of reading a long text again.
    const words: Words = { head, range, from, text, section, only, order, body, kind, side, row: 0 }
    for (const remark of body.remarks)
      if (!this.#remarker.full) this.#remarker.add(remark(), from, this.rows.length)
    const { reference, measured } = body
    const length = measured ?? (reference?.often.kind === 'length' ? reference.range : null)
    if (length) this.#remarker.add(say.needsGauge(quoted(words, length), length), from)
    if (reference?.often.kind === 'open')
      this.#remarker.add(say.askOften(quoted(words, reference.range), reference.range), from)
    if (head && head.numbers.length > 0) return this.#addNumbered(words, head)
    this.#flush(reference ? lastOf(reference.named) : null)
    this.#piece.before([])
    this.#addUnnumbered(words, head, next)
    this.#counted = null
  }

  /** Counts that stand by themselves after a row: "56 sts." */
  addCounts(said: readonly Said[], from: number): void {
    this.#flush(null)
    const row = this.rows.at(-1)
    const counts = [row?.before ?? 0, this.#piece.inWork.loops(this.#place)] as const
    if (row)
      this.#remarker.said(
        said,
        from,
        this.#remarker.names[this.rows.length - 1] ?? '',
        counts,
        this.rows.length - 1,
      )
  }

  /** Words that tell rows, and not how they are worked. */
  leaveOut({ text, from }: Statement): void {
    this.#flush(null)
    this.#counted = null
    this.#remarker.add(say.notRead(text), from)
  }

  /** A line of the whole piece that is no row; false: it has to be read as any other. */
  order(statement: Statement, next: number | null): boolean {
    const { order } = statement
    if (this.#full || !order) return false
    this.#flush(null)
    const words: Words = {
      ...statement,
      body: this.memory.body(''),
      kind: 'row',
      side: null,
      row: 0,
    }
    if (!this.#piece.order(order, words, next)) return false
    this.#told.beginThese()
    this.#counted = null
    return true
  }

  /** A new section counts its rows anew. */
  startSection(title: string): void {
    this.#flush(null)
    this.#piece.startSection(title)
    this.#told.beginThese()
    this.#counted = null
  }

  end(): void {
    this.#flush(null)
    this.#piece.finish()
  }

  #addNumbered(words: Words, head: Head): void {
    if (this.#waiting.comesBetween(head)) this.#flush(null)
    this.#piece.before(head.numbers)
    if (!this.#waiting.add(words, head)) this.#flush(null)
  }

  #flush(upTo: number | null): void {
    for (const { number, words, index } of this.#waiting.take(upTo)) {
      if (this.#full) return
      const { reference, rows, workEven } = words.body
      if (workEven && index === 0) this.#remarker.add(say.untold(workEven), words.from)
      const source = workEven
        ? evenRow(words, this.#steady, this.rows.at(-1))
        : reference
          ? this.#referred(words, reference.named, index, number)
          : words
      // Rows between that are told elsewhere count: "Rows 1, 3, 5" all go the same way.
      const nth = number - (words.head?.numbers[0] ?? number)
      this.#sayGap(words, number)
      if (source) this.#tell(source, words, number, rows, nth)
      this.#counted = source ? number + rows - 1 : number
    }
  }

  /** A number that is left out after the row before, which has one too: no section lies between. */
  #sayGap(words: Words, number: number): void {
    const { kind, head, range } = words
    const last = this.#counted
    if (!this.gaps || !head || last === null || number <= last + 1) return
    if (this.#gapIn === words) return
    this.#gapIn = words
    const lacking = { from: last + 1, to: number - 1 }
    const named = rowsFromTo(kind, lacking.from, lacking.to)
    this.#remarker.add(say.labelGap(named, lacking, head.range), range.from)
  }

  /**
   * Work words as a row of a number, and as `rows` rows in all. `nth`: how many
   * rows after the first one of its words.
   */
  #tell(
    source: Words,
    words: Words,
    number: number,
    rows = 1,
    nth = 0,
    label = String(number),
  ): void {
    this.#number = label === String(number) ? number - 1 : number - 2
    for (let more = 0; more < rows && !this.#full; more++) {
      const from = this.rows.length
      const one = source === words ? inCycle(words, nth + more) : source
      const name = more === 0 ? label : String(this.#number + 1)
      this.#piece.told(one, name)
      this.#workRow(one, words, name, 0, nth + more === 0)
      this.#number++
      this.#told.add({ number: number + more, words: one, from, to: this.rows.length })
      const row = this.rows.at(-1)
      if (row && row.takes === row.makes && this.rows.length - from === 1) this.#steady = one
    }
  }

  #referred(words: Words, named: Named, index: number, number: number): Words | null {
    const source = this.#told.nth(named, index)?.words
    if (!source) this.#missing(words, nameOf(words.kind, String(number)), named)
    return source ?? null
  }

  #missing(words: Words, name: string | null, named: Named): void {
    const range = words.body.reference?.range ?? { from: 0, to: words.text.length }
    const remark = say.noRow(name, named, this.#told.lacking(named), range, words.kind)
    this.#remarker.add(remark, words.from)
  }

  #addUnnumbered(words: Words, head: Head | null, next: number | null): void {
    const { body } = words
    const { reference } = body
    if (reference && (!head || reference.how === 'rep'))
      return this.#repeatRows(words, reference.named, next)
    if (body.workEven) this.#remarker.add(say.untold(body.workEven), words.from)
    const times = (head?.next ?? 1) * body.rows
    for (let n = 0; n < times && !this.#full; n++) {
      const number = this.#number + 1
      const source = body.workEven
        ? evenRow(words, this.#steady, this.rows.at(-1))
        : reference
          ? this.#referred(words, reference.named, n, number)
          : words
      if (!source) return
      // "Dec rnd" before "Rnd 1" has a name and no number.
      const named = times === 1 && head?.name && next === number
      this.#tell(source, words, number, 1, n, named ? head.name : undefined)
    }
  }

  /** "Rep Rnds 1-4 twice more." */
  #repeatRows(words: Words, named: Named, next: number | null): void {
    const told = this.#told.all(named)
    const first = told?.[0]
    const last = told?.at(-1)
    const { body, from } = words
    if (!told || !first || !last || !body.reference) return this.#missing(words, null, named)
    const height = told.reduce((sum, one) => sum + one.to - one.from, 0)
    const around = { lines: told.length, rows: height, last: this.#number, next }
    const { often } = body.reference
    const { more, asked } = settleTimes(often, body.said, around)
    if (asked) {
      const { range, times } = asked
      this.#remarker.add(say.ask('ask-times', quoted(words, range), range, times), from)
    }
    const joined = told.every((one, i) => i === 0 || told[i - 1]?.to === one.from)
    const adjacent = joined && last.to === this.rows.length
    const restarts = next !== null && next === this.#number + 1 && more > 0
    const before = this.#piece.inWork.loops(this.#place)
    const start = this.rows.length
    for (let time = 1; time <= more && !this.#full; time++)
      for (const one of told) {
        const number = restarts ? one.number : ++this.#number
        const at = this.rows.length
        this.#piece.told(one.words, String(number))
        this.#workRow(one.words, words, String(number), time, false)
        if (!restarts) this.#told.add({ number, words: one.words, from: at, to: this.rows.length })
      }
    const rows = this.rows.length - start
    const times = Math.floor(rows / Math.max(1, height))
    const counted = often.kind !== 'length' && often.kind !== 'open'
    if (adjacent && times > 0 && counted)
      this.bands.push({ from: first.from, to: last.to - 1, times: times + 1 })
    const until: Said[] =
      often.kind === 'until' ? [{ kind: 'rows', count: often.rows, range: often.said }] : []
    for (const said of [...body.said, ...until])
      if (said.kind === 'rows' && ![rows + height, rows, around.last + rows].includes(said.count))
        this.#remarker.add(say.statedRows(said, rows + height, unitOf(words.kind)), from)
    this.#remarker.said(
      body.said,
      from,
      'The repeat',
      [before, this.#piece.inWork.loops(this.#place)],
      this.rows.length - 1,
    )
    this.#told.beginThese()
  }

  /** Work words once. `words`: where they are called for. `first`: counts they state are checked. */
  #workRow(source: Words, words: Words, label: string, time: number, first: boolean): void {
    if (this.#full) return
    if (this.rows.length >= readLimits.rows)
      return this.#stop(words, `${figuresOf(readLimits.rows)} rows`)
    const place = this.#place
    const resolved = this.#resolve(source, label, first ? words : null)
    const room = readLimits.rows - this.rows.length
    resolved.rows.slice(0, room).forEach((worked, index) => {
      const part = index === 0 ? label : `${label}${letterOf(index)}`
      const facts = { label: part, source, saidAt: words.range, time }
      const old = this.memory.previous?.rows[this.rows.length]
      this.rows.push(makeRow(this.memory, worked, facts, old))
      this.#work -= worked.stitches.length
      const row = this.rows.length - 1
      this.#remarker.row(worked, nameOf(source.kind, part), source, words, row)
    })
    const last = this.rows.length - 1
    if (first) this.#remarker.asks(resolved, source, last)
    const { covers = null, goes = 'forward' } = resolved.rows.at(-1) ?? {}
    this.#place = this.#piece.inWork.after(resolved.after, covers, goes)
    if (this.#work < 0) return this.#stop(words, `${figuresOf(readLimits.work)} stitches`)
    const { said } = words.body
    const unclear = resolved.rows.some(({ gaps }) => gaps > 0)
    if (resolved.trouble || unclear) {
      const total = said.find(({ kind }) => kind === 'total')
      if (total) this.#place = this.memory.places.withLoops(resolved.after, total.count)
    } else if (first) {
      const counts = [
        this.#piece.inWork.loops(place),
        this.#piece.inWork.loops(resolved.after),
      ] as const
      this.#remarker.said(said, words.from, nameOf(source.kind, label), counts, last)
    }
  }

  /** `said`: the words whose remarks are made; null: they are made already. */
  #resolve(source: Words, label: string, said: Words | null): Resolved {
    const { settings, places } = this.memory
    const wrong = settings.needles && isWrong(source, Number(label))
    const whole =
      (source.head !== null || this.#piece.inWork.round) &&
      source.kind === 'round' &&
      settings.shape === 'ring'
    const { german } = this
    const { row } = source
    if (said) this.#askLooks(source, label)
    const path = this.#piece.inWork.pathOf(source, this.#place)
    const pegs = path ? `${path.run.from}-${path.run.to} ${path.heading}` : ''
    const place = source.body.appears ? this.#looks.after(this.rows, this.#place) : this.#place
    const looks =
      place === this.#place ? '' : place.stacks.map((stack) => lookOf(stack)[0]).join('')
    const key = [whole, wrong, german, row, pegs, looks].join('/')
    return this.memory.resolved(source.body, this.#place, key, () => {
      const body = path ? onPegs(source.body, path) : source.body
      return workBody(body, place, { settings, places, whole, wrong, german, row })
    })
  }

  /** Of words that work the loops as they look, without a row that says how, or with a pattern in it. */
  #askLooks({ body: { appears }, from, kind }: Words, label: string): void {
    if (!appears) return
    const { range, set } = appears
    const last = this.rows.at(-1)
    if (!last) this.#remarker.add(say.noRow(nameOf(kind, label), lastRow, [], range, kind), from)
    else if (set && !isPlain(last)) this.#remarker.add(say.untold({ range, set: false }), from)
  }

  #stop(words: Words, most: string): void {
    if (this.#full) return
    this.#full = true
    this.#remarker.add(
      say.tooLong('The text', most, { from: 0, to: words.text.length }),
      words.from,
    )
  }
}
