import type { Heading } from '../../loom/direction'
import { opposite } from '../../loom/direction'
import type { RowEnd } from '../../loom/row'
import type { Run } from '../../pattern/pattern'
import type { Stitch } from '../../stitches/stitch'
import { stitchOf } from '../../stitches/vocabulary'
import { readLimits } from './limits'
import type { Ambiguity, GroupItem, Item, PegsItem, StitchItem, TurnItem } from './nodes'
import { fromWrongSide } from './needles'
import { mayFill } from './parse/items'
import { loopsOn, type Place } from './place'
import type { ReadStitch, TextRange } from './reading'

/** How the words that have several meanings are taken: which option of each. */
export type Taken = Readonly<Partial<Record<Ambiguity, number>>>

/** What the ambiguous words can stand for, the first unless the counts say otherwise. */
export const options: Readonly<
  Record<Exclude<Ambiguity, 'ask-times'>, readonly (string | null)[]>
> = {
  'ask-yfwd': ['yo', null],
  'ask-inc': ['kfb', 'm1l'],
  'ask-ds': ['k'],
  'ask-k1b': ['ew'],
}

/** Why a row does not come out. */
export type Trouble =
  | {
      readonly kind: 'repeat'
      readonly block: number
      readonly copies: number
      readonly over: number
    }
  | { readonly kind: 'short'; readonly loops: number }
  | { readonly kind: 'over'; readonly loops: number }

/** One real row as it is told; ranges count from the start of its words. */
export interface Stretch {
  readonly stitches: readonly ReadStitch[]
  /** Pegs it names. */
  readonly run: Run | null
  readonly goes: Heading
  readonly end: RowEnd
  readonly takes: number
  readonly makes: number
  /** Loops there were for it. */
  readonly loops: number
  readonly trouble: Trouble | null
  readonly pegTrouble: {
    readonly range: TextRange
    readonly named: number
    readonly next: number
  } | null
  readonly turn: TurnItem | null
  readonly turnPeg: number | null
  /** Words in it that stand for nothing known. */
  readonly gaps: number
  readonly tooLong: boolean
}

/** Is it a row of needles as its wrong side looks, and what of it the right side cannot show. */
export interface Side {
  readonly wrong: boolean
  readonly unknown: Set<StitchItem>
}

const rightReads = new WeakMap<StitchItem, ReadStitch>()
const wrongReads = new WeakMap<StitchItem, ReadStitch>()

/** Yarn said to be at the back of a slipped stitch lies in front, as the right side is seen. */
const seenFromBehind = ({ stitch, atBack }: StitchItem) =>
  atBack ? stitchOf('slf') : fromWrongSide(stitch)

const mostSteps = 20_000
const deepest = 60

interface Size {
  takes: number
  turns: boolean
}

/** Works out the words of one statement on a loom: stitch by stitch, a stretch for each real row. */
export class Expander {
  readonly stretches: Stretch[] = []
  #stitches: ReadStitch[] = []
  #takes = 0
  #makes = 0
  #loops = 0
  #goes: Heading = 'forward'
  #run: Run | null = null
  #first: PegsItem | null = null
  #last: PegsItem | null = null
  #mixed = false
  #trouble: Trouble | null = null
  #pegTrouble: Stretch['pegTrouble'] = null
  #gaps = 0
  #tooLong = false
  #steps = 0

  constructor(
    private place: Place,
    private readonly taken: Taken,
    /** Rounds start at peg 1, whatever stands there. */
    private readonly whole: boolean,
    private readonly advance: (stretch: Stretch, place: Place) => Place,
    private readonly shape: 'ring' | 'bar',
    private readonly side: Side,
  ) {
    this.#begin()
  }

  run(items: readonly Item[]): readonly Stretch[] {
    this.#execute(withFills(items), 0, 0)
    if (this.#stitches.length > 0 || this.#gaps > 0 || this.stretches.length === 0)
      this.#finish(null, items.length > 0)
    return this.stretches
  }

  get #left(): number {
    return this.#loops - this.#takes
  }

  #begin(): void {
    this.#stitches = []
    this.#takes = this.#makes = this.#gaps = 0
    this.#run = this.#first = this.#last = this.#trouble = this.#pegTrouble = null
    this.#mixed = this.#tooLong = false
    this.#goes = this.place.heading
    this.#loops = this.#available(this.#goes)
  }

  /** Loops from the yarn on to the end of the round or row. */
  #available(goes: Heading): number {
    const { place } = this
    const { gap, pegs } = place
    const atStart = goes === 'forward' ? gap === 0 || gap === pegs : gap === pegs || gap === 0
    if (atStart || (this.whole && this.stretches.length === 0)) return place.loops
    return goes === 'forward' ? loopsOn(place, gap, pegs - 1) : loopsOn(place, 0, gap - 1)
  }

  #execute(items: readonly Item[], after: number, depth: number): void {
    if (depth > deepest) {
      this.#tooLong = true
      return
    }
    for (let i = 0; i < items.length; i++) {
      if (this.#steps++ > mostSteps || this.#stitches.length >= readLimits.stitches)
        this.#tooLong = true
      if (this.#tooLong) return
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
        case 'turn':
          this.#turn(item)
          break
        case 'gap':
          this.#gaps++
          break
      }
    }
  }

  #work(item: StitchItem): void {
    this.#mixed = true
    this.#put(this.#readOf(item), item.count ?? 1)
  }

  /** The same object for the same words. */
  #readOf(item: StitchItem): ReadStitch {
    const known = this.side.wrong ? wrongReads : rightReads
    let read = known.get(item)
    if (!read) {
      const stitch = this.side.wrong ? seenFromBehind(item) : item.stitch
      known.set(item, (read = { stitch: stitch ?? item.stitch, range: item.range }))
    }
    if (this.side.wrong && !seenFromBehind(item)) this.side.unknown.add(item)
    return read
  }

  #put(read: ReadStitch, count: number): void {
    const room = readLimits.stitches - this.#stitches.length
    if (count > room) this.#tooLong = true
    const times = Math.min(count, room)
    for (let n = 0; n < times; n++) this.#stitches.push(read)
    this.#takes += read.stitch.takes * times
    this.#makes += read.stitch.makes * times
  }

  #choose(rule: Ambiguity, count: number, range: TextRange): void {
    this.#mixed = true
    const id = rule === 'ask-times' ? null : (options[rule][this.taken[rule] ?? 0] ?? null)
    if (id) this.#put({ stitch: this.#seen(stitchOf(id)), range }, count)
  }

  #seen(stitch: Stitch): Stitch {
    return this.side.wrong ? (fromWrongSide(stitch) ?? stitch) : stitch
  }

  #group(item: GroupItem, list: readonly Item[], at: number, after: number, depth: number): void {
    const { copies } = item
    if (copies.kind === 'fixed' || copies.kind === 'bare') {
      const more = copies.kind === 'bare' && (this.taken['ask-times'] ?? 0) === 0 ? 1 : 0
      const times = copies.times + more
      const rest = times === 1 && hasUntil(item) ? this.#sizeOf(list, at + 1, after) : 0
      for (let n = 0; n < times && !this.#tooLong; n++) this.#execute(item.items, rest, depth + 1)
      return
    }
    const rest = this.#sizeOf(list, at + 1, after)
    const last = copies.kind === 'until' && copies.last > 0 ? copies.last : rest
    const block = this.#measure(item.items, 0)
    const target = this.#left - last
    if (block.takes <= 0) {
      this.#execute(item.items, 0, depth + 1)
      return
    }
    const times = Math.max(0, Math.floor(target / block.takes))
    for (let n = 0; n < times && !this.#tooLong; n++) this.#execute(item.items, 0, depth + 1)
    const over = target - times * block.takes
    if (over === 0 || this.#tooLong) return
    if (
      over > 0 &&
      copies.kind === 'until' &&
      copies.ending &&
      this.#cutShort(item, over, list[at + 1])
    )
      return
    this.#trouble ??= { kind: 'repeat', block: block.takes, copies: times, over }
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
    probe.#loops = readLimits.stitches
    probe.#execute(item.items, 0, 1)
    let taken = 0
    let count = 0
    while (taken < over && count < probe.#stitches.length)
      taken += probe.#stitches[count++]?.stitch.takes ?? 0
    const next = probe.#stitches[count]
    const first = firstStitch(ending)
    if (taken !== over || !next || first !== next.stitch) return false
    for (const read of probe.#stitches.slice(0, count)) this.#put(read, 1)
    return true
  }

  #pegs(item: PegsItem): void {
    if (item.stitch === null) {
      if (this.#stitches.length > 0) return
      this.#setRun(item.first, item.last, item.back)
      return
    }
    if (this.#stitches.length === 0) {
      const back = item.back || (item.first === item.last && this.#goes === 'back')
      this.#goes = back ? 'back' : 'forward'
      this.#first = item
      this.#loops = this.place.loops
    } else {
      const step = this.#goes === 'forward' ? 1 : -1
      const next = this.#last
        ? this.#last.last + step
        : (this.#goes === 'forward' ? 0 : this.place.pegs - 1) + step * this.#takes
      if (next !== item.first) this.#pegTrouble ??= { range: item.range, named: item.first, next }
    }
    this.#last = item
    this.#put(
      { stitch: this.#seen(item.stitch), range: item.range },
      Math.abs(item.last - item.first) + 1,
    )
  }

  #setRun(first: number, last: number, back: boolean): void {
    const run = { from: Math.min(first, last), to: Math.max(first, last) }
    this.#goes = back ? 'back' : 'forward'
    this.#run = run
    this.#loops = loopsOn(this.place, run.from, run.to)
  }

  #turn(item: TurnItem): void {
    if (this.#stitches.length > 0 || this.#run) {
      this.#finish(item, true)
      return
    }
    // A turn before anything is worked only turns.
    this.place = { ...this.place, heading: opposite(this.place.heading) }
    this.#begin()
  }

  #finish(turn: TurnItem | null, told: boolean): void {
    this.#settleRun()
    const loops = this.#loops
    if (told && !this.#trouble && !this.#tooLong) {
      const open = turn !== null && this.#run === null
      if (this.#takes > loops) this.#trouble = { kind: 'over', loops }
      else if (this.#takes < loops && !open && this.#gaps === 0)
        this.#trouble = { kind: 'short', loops }
    }
    const stretch: Stretch = {
      stitches: this.#stitches,
      run: this.#run,
      goes: this.#goes,
      end: turn?.end ?? 'on',
      takes: this.#takes,
      makes: this.#makes,
      loops,
      trouble: this.#gaps > 0 && this.#trouble?.kind === 'short' ? null : this.#trouble,
      pegTrouble: this.#pegTrouble,
      turn,
      turnPeg: turn?.peg ?? null,
      gaps: this.#gaps,
      tooLong: this.#tooLong,
    }
    this.stretches.push(stretch)
    this.place = this.advance(stretch, this.place)
    this.#begin()
  }

  /** A row told by peg numbers alone covers just them; other rows start where the yarn is. */
  #settleRun(): void {
    const first = this.#first
    const last = this.#last
    if (this.#run) return
    if (first && last && !this.#mixed) {
      const run = {
        from: Math.min(first.first, last.last, first.last, last.first),
        to: Math.max(first.first, last.last, first.last, last.first),
      }
      this.#run = run
      this.#loops = loopsOn(this.place, run.from, run.to)
      return
    }
    if (first) this.#loops = this.place.loops
    // Told in full for every peg, though the yarn hangs elsewhere.
    if (this.#takes === this.place.loops) this.#loops = this.place.loops
  }

  /** Loops that the items from one on take, up to a turn; with those that follow their list. */
  #sizeOf(list: readonly Item[], from: number, after: number): number {
    const { takes, turns } = this.#measure(list, from)
    return turns ? takes : takes + after
  }

  #measure(list: readonly Item[], from: number, depth = 0): Size {
    const size: Size = { takes: 0, turns: false }
    if (depth > deepest) return size
    for (let i = from; i < list.length && !size.turns; i++) {
      const item = list[i] as Item
      if (item.do === 'stitch') size.takes += item.stitch.takes * (item.count ?? 1)
      else if (item.do === 'pegs')
        size.takes += item.stitch ? Math.abs(item.last - item.first) + 1 : 0
      else if (item.do === 'turn') size.turns = true
      else if (item.do === 'choice') {
        const id = item.rule === 'ask-times' ? null : options[item.rule][this.taken[item.rule] ?? 0]
        if (id) size.takes += stitchOf(id).takes * item.count
      } else if (item.do === 'group') this.#addGroup(item, size, depth)
    }
    return size
  }

  #addGroup({ items, copies }: GroupItem, size: Size, depth: number): void {
    const inside = this.#measure(items, 0, depth + 1)
    if (inside.turns) size.turns = true
    const more = copies.kind === 'bare' && (this.taken['ask-times'] ?? 0) === 0 ? 1 : 0
    if (copies.kind === 'fixed' || copies.kind === 'bare')
      size.takes += inside.takes * (copies.times + more)
    else size.turns = true
  }
}

const firstStitch = (item: Item | undefined): unknown =>
  item?.do === 'stitch' ? item.stitch : item?.do === 'group' ? firstStitch(item.items[0]) : null

const filled = new WeakMap<readonly Item[], readonly Item[]>()

/** "Knit." as all that a row says means all its pegs. */
function withFills(items: readonly Item[]): readonly Item[] {
  let list = filled.get(items)
  if (!list) filled.set(items, (list = makeFills(items)))
  return list
}

function makeFills(items: readonly Item[]): readonly Item[] {
  const list: Item[] = []
  let chunk: Item[] = []
  const close = () => {
    const worked = chunk.filter(({ do: does }) => does !== 'gap' && does !== 'pegs')
    const [only] = worked
    const pegsWorked = chunk.some((item) => item.do === 'pegs' && item.stitch)
    const fills =
      worked.length === 1 && only?.do === 'stitch' && only.count === null && mayFill(only.stitch)
    for (const item of chunk)
      if (fills && item === only && !pegsWorked)
        list.push({
          do: 'group',
          items: [item],
          copies: { kind: 'until', last: 0, ending: false },
          range: item.range,
        })
      else list.push(item)
    chunk = []
  }
  for (const item of items) {
    if (item.do === 'turn') {
      close()
      list.push(item)
    } else if (item.do === 'group' && hasTurn(item))
      chunk.push({ ...item, items: withFills(item.items) })
    else chunk.push(item)
  }
  close()
  return list
}

const untils = new WeakMap<GroupItem, boolean>()

/** Does a group hold a repeat that goes on to an end? */
function hasUntil(group: GroupItem): boolean {
  let found = untils.get(group)
  if (found === undefined) {
    found = group.items.some(
      (item) =>
        item.do === 'group' &&
        (item.copies.kind === 'until' || item.copies.kind === 'open' || hasUntil(item)),
    )
    untils.set(group, found)
  }
  return found
}

const hasTurn = ({ items }: GroupItem): boolean => items.some((item) => item.do === 'turn')
