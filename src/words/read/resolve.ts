import { readLimits } from './limits'
import type { Memory } from './memory'
import type { Body, Head, Named, RelativeRemark, Said } from './nodes'
import type { Statement } from './outline'
import type { Place } from './place'
import type { ReadBand, ReadRow, Remark, TextRange } from './reading'
import * as say from './remarks/rows'
import { settleTimes, type Repeat } from './repeats'
import { makeRow, type Source } from './rows'
import { workBody, type Resolved, type Worked } from './work'

/** Words to be worked, with the statement they stand in. */
export interface Words extends Source {
  readonly body: Body
  readonly text: string
  readonly kind: 'round' | 'row'
  readonly side: 'right' | 'wrong' | null
  /** It has a head of its own. */
  readonly headed: boolean
}

/** One line of rows that has been told, for references to it. */
interface Told {
  readonly number: number
  readonly words: Words
  /** First of its rows, and the one after the last. */
  readonly from: number
  readonly to: number
}

/** One row of a head that names several, waiting until the rows between are known too. */
interface Waiting {
  readonly number: number
  readonly words: Words
  readonly said: boolean
}

/** Turns statements into real rows, one after the other on one loom. */
export class Resolver {
  readonly rows: ReadRow[] = []
  readonly bands: ReadBand[] = []
  readonly remarks: Remark[] = []
  #place: Place
  #told: Told[] = []
  #waiting: Waiting[] = []
  #every: { from: number; words: Words }[] = []
  #interleaved = false
  /** The number of the last row, as the words count. */
  #number = 0
  /** First of the rows that "these rows" means. */
  #these = 0
  #work: number = readLimits.work
  #full = false
  readonly #byNumber = new Map<number, Words>()

  constructor(private readonly memory: Memory) {
    this.#place = memory.places.start(memory.settings.pegs)
  }

  /** A statement of rows. `next`: the number of the next head, if it is known. */
  add(statement: Statement, body: Body, next: number | null): void {
    const { head, range, from, words: text } = statement
    const kind = head?.head.kind ?? (this.memory.settings.shape === 'ring' ? 'round' : 'row')
    const side = head?.head.side ?? body.side
    const words: Words = { range, from, body, text, kind, side, headed: head !== null }
    this.#remarkAll(body.remarks, from, this.rows.length)
    if (body.measured)
      this.#remark(say.needsGauge(this.#quote(words, body.measured), body.measured), from)
    const { reference } = body
    if (reference && reference.often.kind === 'length')
      this.#remark(say.needsGauge(this.#quote(words, reference.range), reference.range), from)
    if (!head || head.head.numbers.length === 0) {
      this.flush(null)
      return this.#addUnnumbered(words, head?.head ?? null, next)
    }
    this.#addNumbered(words, head.head)
  }

  /** Counts that stand by themselves after a row: "56 sts." */
  addCounts(said: readonly Said[], from: number): void {
    this.flush(null)
    const row = this.rows.at(-1)
    if (row) this.#checkSaid(said, from, `Row ${row.label}`, row.before, this.#place.loops, false)
  }

  /** A new section counts its rows anew. */
  startSection(): void {
    this.flush(null)
    this.#these = this.rows.length
  }

  end(): void {
    this.flush(null)
  }

  #addNumbered(words: Words, { numbers, every }: Head): void {
    const waits = new Set(this.#waiting.map(({ number }) => number))
    const most = this.#waiting.at(-1)?.number ?? 0
    const first = numbers[0] ?? 0
    const gaps = every > 0 || numbers.some((n, i) => i > 0 && n !== (numbers[i - 1] ?? 0) + 1)
    if (numbers.some((n) => waits.has(n)) || (first < most && !gaps && !this.#interleaved))
      this.flush(null)
    if (gaps) this.#interleaved = true
    if (every > 0) this.#every.push({ from: first, words })
    for (const number of numbers) this.#waiting.push({ number, words, said: true })
    if (!this.#interleaved) this.flush(null)
  }

  /** Work the rows that wait, in the order of their numbers. `upTo`: the last number that is named. */
  flush(upTo: number | null): void {
    if (this.#waiting.length === 0) return
    const waiting = this.#waiting
    const known = new Map(waiting.map((one) => [one.number, one]))
    let last = waiting.reduce((most, { number }) => Math.max(most, number), 0)
    if (upTo !== null) last = Math.max(last, Math.min(upTo, last + 1))
    for (const { from, words } of this.#every) {
      const end = upTo === null && from % 2 === 0 ? last + 1 : last
      for (let number = from; number <= end; number += 2)
        if (!known.has(number)) known.set(number, { number, words, said: false })
    }
    this.#waiting = []
    this.#every = []
    const sorted = this.#interleaved
      ? [...known.values()].sort((a, b) => a.number - b.number)
      : waiting
    this.#interleaved = false
    const counts = new Map<Words, number>()
    for (const { number, words } of sorted) {
      const index = counts.get(words) ?? 0
      counts.set(words, index + 1)
      this.#addRow(words, number, index)
    }
  }

  /** A row with a number of its own; `index`: which of the rows of its head it is. */
  #addRow(words: Words, number: number, index: number): void {
    const { reference } = words.body
    const source = reference ? this.#referred(words, reference.named, index, number) : words
    if (!source) return
    this.#number = number
    const from = this.rows.length
    this.#work1(source, words, String(number), 0, index === 0)
    for (let more = 1; more < words.body.rows; more++)
      this.#work1(source, words, String(++this.#number), 0, false)
    this.#told.push({ number, words: source, from, to: this.rows.length })
    this.#byNumber.set(number, source)
  }

  #referred(words: Words, named: Named, index: number, number: number): Words | null {
    const name = nameOf(words.kind, String(number))
    if (named.kind === 'numbers') {
      const wanted = named.numbers[index % named.numbers.length] ?? 0
      const source = this.#byNumber.get(wanted)
      if (!source) this.#missing(words, name, `row ${wanted}`)
      return source ?? null
    }
    const back = named.kind === 'last' ? named.rows : 1
    const source = this.#told.at(-back)?.words
    if (!source) this.#missing(words, name, 'an earlier row')
    return source ?? null
  }

  #missing(words: Words, name: string, wanted: string): void {
    const range = words.body.reference?.range ?? { from: 0, to: words.text.length }
    this.#remark(say.noRow(name, wanted, range), words.from)
  }

  #addUnnumbered(words: Words, head: Head | null, next: number | null): void {
    const { body } = words
    if (body.reference && (!head || body.reference.how === 'rep'))
      return this.#repeatRows(words, body.reference.named, next)
    const times = (head?.next ?? 1) * body.rows
    for (let n = 0; n < times && !this.#full; n++) {
      const number = this.#number + 1
      if (body.workEven) {
        this.#remarkOnce(n, say.asSet(body.workEven), words.from)
        const source = this.#told.at(-1)?.words
        if (source) this.#tell(source, words, number)
      } else if (body.reference) {
        const source = this.#referred(words, body.reference.named, n, number)
        if (source) this.#tell(source, words, number)
      } else this.#tell(words, words, number)
    }
  }

  #tell(source: Words, words: Words, number: number): void {
    const from = this.rows.length
    this.#number = number
    this.#work1(source, words, String(number), 0, true)
    this.#told.push({ number, words: source, from, to: this.rows.length })
    this.#byNumber.set(number, source)
  }

  /** "Rep Rnds 1-4 twice more." */
  #repeatRows(words: Words, named: Named, next: number | null): void {
    const told = this.#toldBy(named)
    if (!told) return this.#missing(words, 'The repeat', 'rows')
    const { body, from } = words
    const first = told[0]
    const end = told.at(-1)
    if (!first || !end || !body.reference) return
    const repeat: Repeat = {
      lines: told.length,
      rows: end.to - first.from,
      last: this.#number,
      next,
    }
    const { more, asked } = settleTimes(body.reference.often, body.said, repeat)
    if (asked)
      this.#remark(
        say.ask('ask-times', this.#quote(words, asked.range), asked.range, asked.times),
        from,
      )
    const adjacent =
      end.to === this.rows.length && told.every((one, i) => i === 0 || told[i - 1]?.to === one.from)
    const restarts = next !== null && next === this.#number + 1 && more > 0
    const before = this.#place.loops
    const start = this.rows.length
    let worked = 0
    for (let time = 1; time <= more && !this.#full; time++, worked++)
      for (const one of told) {
        const number = restarts ? one.number : ++this.#number
        this.#work1(one.words, words, String(number), time, false)
      }
    if (adjacent && worked > 0 && body.reference.often.kind !== 'length')
      this.bands.push({ from: first.from, to: end.to - 1, times: worked + 1 })
    const rows = this.rows.length - start + (adjacent ? end.to - first.from : 0)
    for (const said of body.said)
      if (
        said.kind === 'rows' &&
        said.count !== rows &&
        said.count !== rows - (end.to - first.from)
      )
        this.#remark(say.statedRows(said, rows), from)
    this.#checkSaid(body.said, from, 'The repeat', before, this.#place.loops, this.#place === null)
    this.#these = this.rows.length
  }

  #toldBy(named: Named): readonly Told[] | null {
    if (named.kind === 'numbers') {
      const list = named.numbers.map((number) =>
        this.#told.findLast((one) => one.number === number),
      )
      return list.every((one) => one !== undefined) ? list : null
    }
    const list =
      named.kind === 'last'
        ? this.#told.slice(-named.rows)
        : this.#told.filter(({ from }) => from >= this.#these)
    return list.length > 0 ? list : null
  }

  /** Work words once. `words`: where it is called for. `first`: counts they state are checked. */
  #work1(source: Words, words: Words, label: string, time: number, first: boolean): void {
    if (this.#full) return
    if (this.rows.length >= readLimits.rows) return this.#stop(words, `${readLimits.rows} rows`)
    const name = nameOf(source.kind, label)
    const place = this.#place
    const resolved = this.#resolve(source, label)
    resolved.rows.forEach((worked, index) => {
      const part = index === 0 ? label : `${label}${letterOf(index)}`
      const facts = { label: part, source, saidAt: words.range, time }
      const row = makeRow(this.memory, worked, facts, this.memory.previous?.rows[this.rows.length])
      this.rows.push(row)
      this.#work -= worked.stitches.length
      this.#remarkRow(worked, nameOf(source.kind, part), source, words)
    })
    this.#remarkAsks(resolved, source, first)
    this.#place = resolved.after
    if (this.#work < 0) return this.#stop(words, `${readLimits.work} stitches`)
    if (resolved.trouble) {
      const total = words.body.said.find(({ kind }) => kind === 'total')
      if (total) this.#place = this.memory.places.withLoops(resolved.after, total.count)
    } else {
      const gaps = resolved.rows.some((row) => row.gaps > 0)
      if (first)
        this.#checkSaid(words.body.said, words.from, name, place.loops, resolved.after.loops, gaps)
    }
  }

  #resolve(source: Words, label: string): Resolved {
    const { settings, places } = this.memory
    const wrong = settings.needles && this.#isWrong(source, Number(label))
    const whole = source.headed && source.kind === 'round' && settings.shape === 'ring'
    const key = `${whole ? 'whole' : ''}/${wrong ? 'wrong' : ''}`
    return this.memory.resolved(source.body, this.#place, key, () =>
      workBody(source.body, this.#place, { settings, places, whole, wrong }),
    )
  }

  /** Even rows of needles show their wrong side unless the words say otherwise. */
  #isWrong({ side, kind }: Words, number: number): boolean {
    if (side) return side === 'wrong'
    return kind === 'row' && number % 2 === 0
  }

  #stop(words: Words, most: string): void {
    if (this.#full) return
    this.#full = true
    this.#remark(say.tooLong('The text', most, { from: 0, to: words.text.length }), words.from)
  }

  #remarkRow(worked: Worked, name: string, source: Words, words: Words): void {
    const { trouble, pegTrouble, turn, turnPeg, tooLong } = worked
    const whole = { from: 0, to: source.text.length }
    const add = (remark: RelativeRemark, pegs: Remark['pegs'] = null) =>
      this.#remark(remark, source.from, this.rows.length - 1, pegs)
    if (tooLong) add(say.tooLong(name, `${readLimits.stitches} stitches`, whole))
    else if (trouble) {
      // A row that is only referred to goes wrong where it is called for.
      const at =
        source === words
          ? whole
          : { from: words.range.from - source.from, to: words.range.to - source.from }
      add(say.rowCount(name, trouble, worked, at), pegsLeft(worked))
    }
    if (pegTrouble) add(say.pegsSkipped(name, pegTrouble.named, pegTrouble.next, pegTrouble.range))
    if (!turn) return
    const next = turnPegOf(worked, this.memory.settings.shape)
    if (turnPeg !== null && next !== null && next !== turnPeg)
      add(say.turnPeg(name, turnPeg, next, turn.range))
    if (turn.end === 'on') add(say.plainTurn(name, turn.range))
  }

  #remarkAsks({ asks, side }: Resolved, source: Words, first: boolean): void {
    if (!first) return
    for (const item of side.unknown)
      this.#remark(
        say.wrongSide(item.stitch.us.abbr, item.range),
        source.from,
        this.rows.length - 1,
      )
    if (asks.length > 0) this.#askAbout(source.body.items, asks, source)
  }

  #askAbout(items: Body['items'], asks: Resolved['asks'], source: Words): void {
    for (const item of items) {
      if (item.do === 'choice' && asks.includes(item.rule))
        this.#remark(
          say.ask(item.rule, this.#quote(source, item.range), item.range),
          source.from,
          this.rows.length - 1,
        )
      if (item.do !== 'group') continue
      if (item.copies.kind === 'bare' && asks.includes('ask-times')) {
        const { said, times } = item.copies
        this.#remark(
          say.ask('ask-times', this.#quote(source, said), said, times),
          source.from,
          this.rows.length - 1,
        )
      }
      if (item.copies.kind === 'open')
        this.#remark(
          say.askMarker(this.#quote(source, item.range), item.range),
          source.from,
          this.rows.length - 1,
        )
      this.#askAbout(item.items, asks, source)
    }
  }

  #checkSaid(
    said: readonly Said[],
    from: number,
    name: string,
    before: number,
    after: number,
    unsure: boolean,
  ): void {
    if (unsure) return
    for (const one of said) {
      const wrong =
        one.kind === 'total'
          ? one.count !== after
          : one.kind === 'change' && one.count !== after - before
      if (wrong) this.#remark(say.statedCount(name, one, after, before), from, this.rows.length - 1)
    }
  }

  #quote({ text }: Words, { from, to }: TextRange): string {
    return text.slice(from, Math.min(to, from + 60)).trim()
  }

  #remarkOnce(n: number, remark: RelativeRemark, from: number): void {
    if (n === 0) this.#remark(remark, from)
  }

  #remarkAll(list: readonly RelativeRemark[], from: number, row: number): void {
    for (const remark of list) this.#remark(remark, from, row)
  }

  #remark(
    { range, fixes, ...rest }: RelativeRemark,
    by: number,
    row: number | null = null,
    pegs: Remark['pegs'] = null,
  ): void {
    if (this.remarks.length >= readLimits.remarks) return
    const moved = (one: TextRange) => ({ from: one.from + by, to: one.to + by })
    this.remarks.push({
      ...rest,
      range: moved(range),
      row,
      pegs,
      fixes: fixes.map(({ label, changes }) => ({
        label,
        changes: changes.map((change) => ({ ...change, range: moved(change.range) })),
      })),
    })
  }
}

const nameOf = (kind: 'round' | 'row', label: string): string =>
  `${kind === 'round' ? 'Rnd' : 'Row'} ${label}`

/** The second row of one line is 5b. */
const letterOf = (index: number): string =>
  index < 26 ? String.fromCharCode(97 + index) : `.${index + 1}`

/** Pegs of the loops that a row leaves unworked. */
function pegsLeft({ trouble, takes, goes, covers, before }: Worked): Remark['pegs'] {
  if (!trouble || !covers || before.occupied) return null
  const over =
    trouble.kind === 'repeat' ? trouble.over : trouble.kind === 'short' ? trouble.loops - takes : 0
  if (over <= 0) return null
  const { from, to } = covers
  return goes === 'forward'
    ? { from: Math.max(from, to - over + 1), to }
    : { from, to: Math.min(to, from + over - 1) }
}

/** The peg that a turn falls on, after the stitches before it. */
function turnPegOf({ covers, goes, end, before }: Worked, shape: 'ring' | 'bar'): number | null {
  if (!covers) return null
  const last = goes === 'forward' ? covers.to : covers.from
  if (end !== 'wrap') return last
  const next = goes === 'forward' ? last + 1 : last - 1
  return shape === 'ring' ? (next + before.pegs) % before.pegs : next
}
