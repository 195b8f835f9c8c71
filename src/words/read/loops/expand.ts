import { opposite, type Heading } from '../../../loom/direction'
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
  readonly stretches: RowTold[] = []
  #row: RowUnderWay
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
    this.#row = rowBegun(place.heading, this.#available(place.heading))
  }

  run(items: readonly Item[]): readonly RowTold[] {
    const all = withFills(items)
    const { takes, turns } = sizeOf(all, 0, this.taken)
    this.#needs = turns || takes >= readLimits.number ? null : takes
    this.#execute(all, 0, 0)
    if (this.#row.stitches.length > 0 || this.#row.gaps > 0 || this.stretches.length === 0)
      this.#finish(null, items.length > 0, endsInTurns(items))
    return this.stretches
  }

  get #left(): number {
    return this.#row.loops - this.#row.takes
  }

  #begin(): void {
    const goes = this.place.heading
    this.#row = rowBegun(goes, this.#available(goes))
  }

  /** Loops from the yarn on to the end of the round or row. */
  #available(goes: Heading): number {
    const { place } = this
    const { gap } = place.yarn
    const pegs = pegsOf(place)
    if (gap === 0 || gap === pegs || (this.whole && this.stretches.length === 0)) return place.loops
    return goes === 'forward' ? loopsOn(place, gap, pegs - 1) : loopsOn(place, 0, gap - 1)
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
    if (item.stitch === null) {
      if (this.#row.stitches.length > 0) return
      this.#setRun(item.first, item.last, item.back)
      return
    }
    if (this.#row.stitches.length === 0) {
      const back = item.back || (item.first === item.last && this.#row.goes === 'back')
      this.#row.goes = back ? 'back' : 'forward'
      this.#row.first = item
      this.#row.loops = this.place.loops
      if (this.#goesOverJoin(item)) return this.#workOverJoin(item)
    } else {
      const step = this.#row.goes === 'forward' ? 1 : -1
      const next = this.#row.last
        ? this.#row.last.last + step
        : (this.#row.goes === 'forward' ? 0 : pegsOf(this.place) - 1) + step * this.#row.takes
      if (this.#isJoin(next, item.first)) this.#row.joinedAt ??= this.#row.takes
      else if (next !== item.first)
        this.#row.pegTrouble ??= { range: item.range, named: item.first, next }
    }
    this.#row.last = item
    this.#put(
      { stitch: seen(item.stitch, this.side.wrong), range: item.range },
      Math.abs(item.last - item.first) + 1,
    )
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
    const { gap } = yarn
    return (
      this.shape === 'ring' && first > last && gap > 0 && gap === first && heading === 'forward'
    )
  }

  #workOverJoin(item: PegsItem): void {
    const { first, last, stitch, range } = item
    if (!stitch) return
    this.#row.goes = 'forward'
    this.#row.last = item
    this.#row.joinedAt = pegsOf(this.place) - first
    this.#put({ stitch: seen(stitch, this.side.wrong), range }, this.#row.joinedAt + last + 1)
  }

  #setRun(first: number, last: number, back: boolean): void {
    const run = { from: Math.min(first, last), to: Math.max(first, last) }
    this.#row.goes = back ? 'back' : 'forward'
    this.#row.run = run
    this.#row.loops = loopsOn(this.place, run.from, run.to)
  }

  #turn(item: TurnItem): void {
    if (this.#row.stitches.length > 0 || this.#row.run) {
      this.#finish(item, true)
      return
    }
    // A turn before anything is worked only turns.
    this.place = { ...this.place, heading: opposite(this.place.heading) }
    this.#begin()
  }

  /** `goesOn`: what is left unworked is not left over. */
  #finish(turn: TurnItem | null, told: boolean, goesOn = turn !== null && !this.#row.run): void {
    this.#settleRun()
    const loops = this.#row.loops
    let unread = 0
    const join = this.#row.tooLong ? null : this.#overJoin(turn)
    if (join) this.#row.trouble = join
    if (told && !this.#row.trouble && !this.#row.tooLong) {
      if (this.#row.takes > loops) this.#row.trouble = { kind: 'over', loops }
      else if (this.#row.takes < loops && !(goesOn && !this.#row.run)) {
        const left = loops - this.#row.takes
        if (this.#row.gaps === 0) this.#row.trouble = { kind: 'short', loops }
        else if (this.#row.gapLoops !== left && this.#row.gapLoops !== Infinity) unread = left
      }
    }
    const { stitches, run, goes, takes, makes, trouble, pegTrouble, gaps, tooLong } = this.#row
    const stretch: RowTold = {
      stitches,
      run,
      goes,
      end: turn?.end ?? 'on',
      takes,
      makes,
      loops,
      trouble,
      pegTrouble,
      turn,
      turnPeg: turn?.peg ?? null,
      gaps,
      unread,
      tooLong,
      needs: this.#needs,
    }
    this.stretches.push(stretch)
    this.place = this.advance(stretch, this.place)
    this.#begin()
  }

  #overJoin(turn: TurnItem | null): Trouble | null {
    const takes = this.#row.takes
    const named = this.#row.joinedAt
    if (named !== null) return { kind: 'join', loops: named, over: takes - named }
    const loops = this.#row.loops
    const inside = this.shape === 'ring' && turn !== null && !this.#row.run && !this.#row.first
    return inside && loops < takes && takes <= this.place.loops
      ? { kind: 'join', loops, over: takes - loops }
      : null
  }

  /** A row told by peg numbers alone covers just them; other rows start where the yarn is. */
  #settleRun(): void {
    const first = this.#row.first
    const last = this.#row.last
    if (this.#row.run || this.#row.joinedAt !== null) return
    if (first && last && !this.#row.mixed) {
      const run = {
        from: Math.min(first.first, last.last, first.last, last.first),
        to: Math.max(first.first, last.last, first.last, last.first),
      }
      this.#row.run = run
      this.#row.loops = loopsOn(this.place, run.from, run.to)
      return
    }
    if (first) this.#row.loops = this.place.loops
    // Told in full for every peg, though the yarn hangs elsewhere.
    if (this.#row.takes === this.place.loops) this.#row.loops = this.place.loops
  }
}

const firstStitch = (item: Item | undefined): unknown =>
  item?.do === 'stitch' ? item.stitch : item?.do === 'group' ? firstStitch(item.items[0]) : null
