import { opposite } from '../../../loom/direction'
import { emptyStack } from '../../../loom/strand'
import { memo } from '../../../pattern/memo'
import { standardVocabulary } from '../../../stitches/vocabulary'
import { readLimits } from '../limits'
import type { Ambiguity, FillItem, GroupItem, Item, PegsItem, StitchItem, TurnItem } from '../nodes'
import { itemFromBehind, seen } from './needles'
import { endsInTurns, withFills } from './fills'
import { loopsOn, lookOf, pegsOf, stacksAhead, type LoomThen } from './place'
import type { ReadStitch, TextRange } from '../reading'
import { deepest, hasUntil, sizeOf, timesOf } from './sizes'
import {
  options,
  rowBegun,
  type RowUnderWay,
  type NeedleSide,
  type RowTold,
  type Taken,
  type Trouble,
} from './stretch'

/** What an item shows on the right side, worked on the wrong side. */
const fromBehind = memo((item: StitchItem): ReadStitch => ({
  stitch: itemFromBehind(item) ?? item.stitch,
  range: item.range,
}))

const appearing = (['knit', 'purl'] as const).map((role) => standardVocabulary.withRole(role))

/** Works out the words of one statement on a loom: stitch by stitch, a stretch for each real row. */
export class Expander {
  #row: RowUnderWay
  /** Rows that are worked out. */
  #rows = 0
  /** Loops that its words take, if they are too long to be worked out. */
  #needs: number | null = null
  #steps = 0

  constructor(
    private place: LoomThen,
    private readonly taken: Taken,
    /** Rounds start at peg 1, whatever stands there. */
    private readonly whole: boolean,
    private readonly advance: (stretch: RowTold, place: LoomThen) => LoomThen,
    private readonly shape: 'ring' | 'bar',
    private readonly side: NeedleSide,
  ) {
    this.#row = this.#begin()
  }

  run(items: readonly Item[]): void {
    const all = withFills(items)
    const { takes, turns } = sizeOf(all, 0, this.taken)
    this.#needs = turns || takes >= readLimits.number ? null : takes
    this.#execute(all, 0, 0)
    if (this.#row.stitches.length > 0 || this.#row.gaps > 0 || this.#rows === 0)
      this.#finish(null, items.length > 0, endsInTurns(items))
  }

  get #left(): number {
    return this.#row.loops - this.#row.takes
  }

  /** The next row, with the loops from the yarn on to the end of the round or row. */
  #begin(): RowUnderWay {
    const { place } = this
    const { heading, loops } = place
    const { gap } = place.yarn
    const pegs = pegsOf(place)
    const all = gap === 0 || gap === pegs || (this.whole && this.#rows === 0)
    const [from, to] = heading === 'forward' ? [gap, pegs - 1] : [0, gap - 1]
    return rowBegun(heading, all ? loops : loopsOn(place, from, to))
  }

  #execute(items: readonly Item[], after: number, depth: number): void {
    // A repeat of nothing costs its step as well.
    if (depth > deepest || this.#steps++ > readLimits.steps) {
      this.#row.tooLong = true
      return
    }
    for (let i = 0; i < items.length; i++) {
      if (this.#steps++ > readLimits.steps || this.#row.stitches.length >= readLimits.stitches)
        this.#row.tooLong = true
      if (this.#row.tooLong) return
      const item = items[i] as Item
      switch (item.do) {
        case 'stitch':
          this.#work(item)
          break
        case 'choice':
          this.#choose(item.rule, item.count, item.range)
          break
        case 'group':
          this.#group(item, items, i, after, depth)
          break
        case 'pegs':
          this.#pegs(item)
          break
        case 'fill':
          this.#fill(item, items, i, after)
          break
        case 'turn':
          this.#turn(item)
          break
        case 'gap':
          this.#row.gaps++
          this.#row.gapLoops += item.number ?? Infinity
          break
      }
    }
  }

  #work(item: StitchItem): void {
    this.#row.mixed = true
    this.#put(this.#readOf(item), item.count ?? 1)
  }

  /** The same object for the same words; as the right side looks, the item itself. */
  #readOf(item: StitchItem): ReadStitch {
    if (!this.side.wrong) {
      if (item.twinOf) this.side.unknown.add(item)
      return item
    }
    if (!itemFromBehind(item)) this.side.unknown.add(item)
    return fromBehind(item)
  }

  #put(read: ReadStitch, count: number): void {
    const room = readLimits.stitches - this.#row.stitches.length
    if (count > room) this.#row.tooLong = true
    const times = Math.min(count, room)
    for (let n = 0; n < times; n++) this.#row.stitches.push(read)
    this.#row.takes += read.stitch.takes * times
    this.#row.makes += read.stitch.makes * times
  }

  #choose(rule: Ambiguity, count: number, range: TextRange): void {
    this.#row.mixed = true
    const role = rule === 'ask-times' ? null : (options[rule][this.taken[rule] ?? 0] ?? null)
    const stitch = role && standardVocabulary.withRole(role)
    if (stitch) this.#put({ stitch: seen(stitch, this.side.wrong), range }, count)
  }

  #group(item: GroupItem, list: readonly Item[], at: number, after: number, depth: number): void {
    const { copies } = item
    const fixed = timesOf(item, this.taken)
    if (fixed !== null) {
      const rest = fixed === 1 && hasUntil(item) ? this.#sizeAfter(list, at, after) : 0
      for (let n = 0; n < fixed && !this.#row.tooLong; n++)
        this.#execute(item.items, rest, depth + 1)
      return
    }
    const rest = this.#sizeAfter(list, at, after)
    const last = copies.kind === 'until' && copies.last > 0 ? copies.last : rest
    const block = sizeOf(item.items, 0, this.taken)
    const target = this.#left - last
    if (block.takes <= 0) {
      this.#execute(item.items, 0, depth + 1)
      return
    }
    const times = Math.max(0, Math.floor(target / block.takes))
    for (let n = 0; n < times && !this.#row.tooLong; n++) this.#execute(item.items, 0, depth + 1)
    const over = target - times * block.takes
    if (over === 0 || this.#row.tooLong) return
    if (
      over > 0 &&
      copies.kind === 'until' &&
      copies.ending &&
      this.#cutShort(item, over, list[at + 1])
    )
      return
    this.#row.trouble ??= { kind: 'repeat', block: block.takes, copies: times, over }
  }

  /** All loops that are left, but for those of what follows. */
  #fill(item: FillItem, list: readonly Item[], at: number, after: number): void {
    this.#row.mixed = true
    const count = this.#left - (item.last > 0 ? item.last : this.#sizeAfter(list, at, after))
    const width = item.rows ? this.#fabric(item, item.rows, count) : this.#appear(item, count)
    const over = count - Math.max(0, Math.floor(count / width)) * width
    if (item.rows && (count < 0 || (over > 0 && item.whole && this.shape === 'ring')))
      this.#row.trouble ??= { kind: 'repeat', block: width, copies: (count - over) / width, over }
  }

  /**
   * Flat, every other row goes back over the first one and meets the repeat from its other end: so
   * the columns stand above each other. Named in a row that shows its wrong side, it begins as that
   * side looks: knit and purl change places in all of its rows. Gives the width of the repeat.
   */
  #fabric({ range }: FillItem, rows: NonNullable<FillItem['rows']>, count: number): number {
    const { needles, wrong, row } = this.side
    const behind = needles && wrong === (row % 2 === 0)
    const reads = (rows[row % rows.length] ?? []).map((stitch): ReadStitch => ({
      stitch: seen(stitch, behind),
      range,
    }))
    const back = this.shape === 'bar' && row % 2 === 1
    for (let n = 0; n < count && !this.#row.tooLong; n++) {
      const read = reads[(back ? count - 1 - n : n) % reads.length]
      if (read) this.#put(read, 1)
    }
    return reads.length
  }

  /** Each loop as it looks: nothing of it depends on the side that is seen. */
  #appear({ range }: FillItem, count: number): number {
    const [knit, purl] = appearing.map((stitch): ReadStitch => ({ stitch, range }))
    const { run, goes, loops, takes } = this.#row
    const stacks = stacksAhead(this.place, { run, goes, whole: loops === this.place.loops })
    for (let n = 0; n < count && !this.#row.tooLong; n++) {
      const read = lookOf(stacks[takes + n] ?? emptyStack) === 'purl' ? purl : knit
      if (read) this.#put(read, 1)
    }
    return 1
  }

  /** "end k3": the last copy is broken off in the middle, at a stitch that the ending goes on with. */
  #cutShort(item: GroupItem, over: number, ending: Item | undefined): boolean {
    const probe = new Expander(
      { ...this.place, loops: over + 1 },
      this.taken,
      true,
      (_, place) => place,
      this.shape,
      this.side,
    )
    probe.#row.loops = readLimits.stitches
    probe.#execute(item.items, 0, 1)
    let taken = 0
    let count = 0
    while (taken < over && count < probe.#row.stitches.length)
      taken += probe.#row.stitches[count++]?.stitch.takes ?? 0
    const next = probe.#row.stitches[count]
    const first = firstStitch(ending)
    if (taken !== over || !next || first !== next.stitch) return false
    for (const read of probe.#row.stitches.slice(0, count)) this.#put(read, 1)
    return true
  }

  /** Loops that the items behind one take, with those that follow their list. */
  #sizeAfter(list: readonly Item[], at: number, after: number): number {
    const { takes, turns } = sizeOf(list, at + 1, this.taken)
    return turns ? takes : takes + after
  }

  #pegs(item: PegsItem): void {
    const row = this.#row
    const { first, last, stitch, range } = item
    if (stitch === null) {
      if (row.stitches.length === 0) this.#setRun(first, last, item.back)
      return
    }
    let count = Math.abs(last - first) + 1
    if (row.stitches.length === 0) {
      const back = item.back || (first === last && row.goes === 'back')
      row.goes = back ? 'back' : 'forward'
      row.first = item
      row.loops = this.place.loops
      if (this.#goesOverJoin(item)) {
        row.goes = 'forward'
        row.joinedAt = pegsOf(this.place) - first
        count = row.joinedAt + last + 1
      }
    } else {
      const step = row.goes === 'forward' ? 1 : -1
      const start = row.goes === 'forward' ? 0 : pegsOf(this.place) - 1
      const next = row.last ? row.last.last + step : start + step * row.takes
      if (this.#isJoin(next, first)) row.joinedAt ??= row.takes
      else if (next !== first) row.pegTrouble ??= { range, named: first, next }
    }
    row.last = item
    this.#put({ stitch: seen(stitch, this.side.wrong), range }, count)
  }

  /** On a ring peg 1 follows the last peg. */
  #isJoin(next: number, named: number): boolean {
    const pegs = pegsOf(this.place)
    if (this.shape !== 'ring') return false
    return (next === pegs && named === 0) || (next === -1 && named === pegs - 1)
  }

  /** "Knit pegs 20 to 4" goes back, but on over the join where the yarn waits before peg 20. */
  #goesOverJoin({ first, last }: PegsItem): boolean {
    const { yarn, heading } = this.place
    const waits = yarn.gap > 0 && yarn.gap === first && heading === 'forward'
    return this.shape === 'ring' && first > last && waits
  }

  #setRun(first: number, last: number, back: boolean): void {
    const run = { from: Math.min(first, last), to: Math.max(first, last) }
    this.#row.goes = back ? 'back' : 'forward'
    this.#row.run = run
    this.#row.loops = loopsOn(this.place, run.from, run.to)
  }

  #turn(item: TurnItem): void {
    if (this.#row.stitches.length > 0 || this.#row.run) return this.#finish(item, true)
    // A turn before anything is worked only turns.
    this.place = { ...this.place, heading: opposite(this.place.heading) }
    this.#row = this.#begin()
  }

  /** `goesOn`: what is left unworked is not left over. */
  #finish(turn: TurnItem | null, told: boolean, goesOn = turn !== null): void {
    this.#settleRun()
    const row = this.#row
    const { loops, takes } = row
    const left = loops - takes
    let unread = 0
    if (!row.tooLong) row.trouble = this.#overJoin(turn) ?? row.trouble
    if (told && !row.trouble && !row.tooLong) {
      if (left < 0) row.trouble = { kind: 'over', loops }
      else if (left > 0 && (row.run || !goesOn)) {
        if (row.gaps === 0) row.trouble = { kind: 'short', loops }
        else if (row.gapLoops !== left && row.gapLoops !== Infinity) unread = left
      }
    }
    const end = turn?.end ?? 'on'
    this.place = this.advance({ ...row, end, turn, unread, needs: this.#needs }, this.place)
    this.#rows++
    this.#row = this.#begin()
  }

  #overJoin(turn: TurnItem | null): Trouble | null {
    const { takes, joinedAt, loops, run, first } = this.#row
    if (joinedAt !== null) return { kind: 'join', loops: joinedAt, over: takes - joinedAt }
    const inside = this.shape === 'ring' && turn !== null && !run && !first
    return inside && loops < takes && takes <= this.place.loops
      ? { kind: 'join', loops, over: takes - loops }
      : null
  }

  /** A row told by peg numbers alone covers just them; other rows start where the yarn is. */
  #settleRun(): void {
    const row = this.#row
    const { first, last } = row
    if (row.run || row.joinedAt !== null) return
    if (first && last && !row.mixed) {
      const pegs = [first.first, last.last, first.last, last.first]
      const run = { from: Math.min(...pegs), to: Math.max(...pegs) }
      row.run = run
      row.loops = loopsOn(this.place, run.from, run.to)
    } else if (first || row.takes === this.place.loops)
      // Told in full for every peg, though the yarn may hang elsewhere.
      row.loops = this.place.loops
  }
}

const firstStitch = (item: Item | undefined): unknown =>
  item?.do === 'stitch' ? item.stitch : item?.do === 'group' ? firstStitch(item.items[0]) : null
