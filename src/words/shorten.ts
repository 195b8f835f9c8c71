import { cut, never, num, repeatCost, runCost, timesCost, word, type RowText } from './measure'
import { Path, type PathStep } from './path'
import { findRepetitions, sameRepetitions, type Repetition } from './repeats'
import { Starts } from './starts'

/** A stitch worked `count` times, or a group of parts worked `times` times. */
export type Shortened =
  | { readonly stitch: number; readonly count: number }
  | { readonly parts: readonly Shortened[]; readonly times: number }

/** A row in its shortest words: `before`, then *`block`; rep from * to last `lastLoops`, `after`. */
export interface Short {
  readonly before: readonly Shortened[]
  readonly block: readonly Shortened[] | null
  readonly after: readonly Shortened[]
  /** Loops that `after` takes. */
  readonly lastLoops: number
}

/** Groups may hold groups, no deeper than this: [k1, (p1, k1) 3 times] twice. */
const deepest = 2
const depthInStar = 1

const manyRepetitions = 80
const shortGroup = 16

/** Four runs are the least in which a group can save anything (a, b, a, b), and it costs as much. */
const leastWithGroup = 4 * word

/** Room to work in, one row at a time: making it anew costs more than using it. */
const paths = [new Path(), new Path(), new Path()] as const
const starts = [new Starts(), new Starts(), new Starts()] as const
const starPath = new Path()
const breaksFound: readonly [number[], number[], number[]] = [[], [], []]
type Depth = 0 | 1 | 2

const makeRoom = (length: number) => ({
  length,
  runEnd: new Int32Array(length),
  runStart: new Int32Array(length),
  loopsFrom: new Int32Array(length),
  plainFrom: new Int32Array(length),
})
let room = makeRoom(512)

/**
 * The shortest words for a row. `withStar`: the row comes out at the end, so that "rep from * to
 * end" says how often. The asterisk is for a repeat that fills at least half the row.
 */
export function shorten(text: RowText, withStar: boolean): Short {
  return new Shortener(text).shortest(withStar)
}

class Shortener {
  readonly #text: RowText
  readonly #count: number
  readonly #repetitions: readonly Repetition[]
  /** For each repetition, the first that repeats the same stitches at the same places. */
  readonly #same: readonly number[]
  /** One past the last stitch of the run that a stitch belongs to. */
  readonly #runEnd: Int32Array
  readonly #runStart: Int32Array
  readonly #loopsFrom: Int32Array
  /** What it costs to write the row from a stitch on without any group. */
  readonly #plainFrom: Int32Array
  readonly #blocks = new Map<number, number>()

  constructor(text: RowText) {
    const { stitches, counted, takes } = text
    const count = stitches.length
    this.#text = text
    this.#count = count
    if (room.length < count + 1) room = makeRoom(count + 1)
    this.#runEnd = room.runEnd
    this.#runStart = room.runStart
    this.#loopsFrom = room.loopsFrom
    this.#plainFrom = room.plainFrom
    this.#loopsFrom[count] = 0
    this.#plainFrom[count] = 0
    this.#runStart[0] = 0
    for (let i = count - 1; i >= 0; i--) {
      const same = i + 1 < count && stitches[i] === stitches[i + 1]
      const end = same ? num(this.#runEnd, i + 1) : i + 1
      this.#runEnd[i] = end
      this.#plainFrom[i] = num(this.#plainFrom, end) + runCost(text, i, end)
      this.#loopsFrom[i] = num(this.#loopsFrom, i + 1) + (takes[num(stitches, i)] ?? 0)
    }
    for (let i = 1; i < count; i++)
      this.#runStart[i] = num(this.#runEnd, i - 1) > i ? num(this.#runStart, i - 1) : i
    this.#repetitions = findRepetitions(stitches, this.#runEnd, counted)
    this.#same = sameRepetitions(this.#repetitions, stitches)
  }

  shortest(withStar: boolean): Short {
    const count = this.#count
    const whole = this.#solve(0, count, deepest)
    const starred = withStar && this.#mayHaveStar() ? this.#solveWithStar(whole) : null
    if (!starred || starred.cost(0) >= whole.cost(0)) {
      const before = this.#parts(whole, 0, count, deepest)
      return { before, block: null, after: [], lastLoops: 0 }
    }
    const steps = starred.steps(0, count, this.#text.stitches)
    const star = steps.pop() as PathStep
    return {
      before: steps.map((step) => this.#part(step, deepest)),
      block: this.#block(star.from, -star.how, depthInStar),
      after: this.#parts(whole, star.to, count, deepest),
      lastLoops: num(this.#loopsFrom, star.to),
    }
  }

  #mayHaveStar(): boolean {
    return this.#repetitions.some(({ from, to }) => (to - from) * 2 >= this.#count)
  }

  /** The cheapest ways with one asterisk: for each stitch, those that have it at or after there. */
  #solveWithStar(without: Path): Path {
    starPath.begin(0, this.#count, never)
    this.#fill(starPath, 0, this.#count, deepest, without)
    return starPath
  }

  /** The cheapest words of stitches from..to, without an asterisk. */
  #solve(from: number, to: number, depth: Depth): Path {
    const path = paths[depth]
    path.begin(from, to, 0)
    this.#findStarts(from, to, depth)
    this.#fill(path, from, to, depth, null)
    return path
  }

  /** Fill a path from the last stitch back: runs of like stitches, and groups. */
  #fill(path: Path, from: number, to: number, depth: Depth, without: Path | null): void {
    const { stitches } = this.#text
    const found = starts[depth]
    /** Stitches after this one in its run at which a group may start. */
    const breaks = breaksFound[depth]
    let breakCount = 0
    for (let at = to - 1; at >= from; at--) {
      const end = Math.min(num(this.#runEnd, at), to)
      if (end === at + 1) breakCount = 0
      path.offerRun(at, end, path.cost(end) + this.#plainCost(at, end))
      for (let i = 0; i < breakCount; i++) {
        const next = breaks[i] as number
        path.offerRun(at, next, path.costWithGroup(next) + runCost(this.#text, at, next))
      }
      let entry = found.at(at)
      if (entry >= 0) breaks[breakCount++] = at
      const insideRun = at > from && stitches[at - 1] === stitches[at]
      for (; entry >= 0; entry = found.after(entry)) {
        const repetition = found.repetition[entry] as number
        const { period } = this.#repetitions[repetition] as Repetition
        const last = lastCopy(at, period, found.to[entry] as number)
        if (period > 1) this.#offerGroup(path, at, last, repetition, depth, insideRun)
        if (without) this.#offerStar(path, at, last, repetition, without, insideRun)
      }
    }
  }

  #offerGroup(
    path: Path,
    at: number,
    last: number,
    repetition: number,
    depth: Depth,
    insideRun: boolean,
  ): void {
    const { period } = this.#repetitions[repetition] as Repetition
    const around = path.cost(last) + timesCost((last - at) / period)
    const least = this.#least(at, period, (depth - 1) as Depth)
    if (around + least >= path.cost(at) && !insideRun) return
    const inside = this.#blockCost(at, repetition, (depth - 1) as Depth, insideRun)
    path.offerGroup(at, last, around + inside, period)
  }

  #offerStar(
    path: Path,
    at: number,
    last: number,
    repetition: number,
    without: Path,
    insideRun: boolean,
  ): void {
    const { period } = this.#repetitions[repetition] as Repetition
    const loops = num(this.#loopsFrom, at) - num(this.#loopsFrom, at + period)
    const tail = num(this.#loopsFrom, last)
    if (loops === 0 || (last < this.#count && tail === 0)) return
    if ((last - at) * 2 < this.#count) return
    const around = without.cost(last) + repeatCost(last < this.#count ? tail : 0)
    const inside = this.#blockCost(at, repetition, depthInStar, insideRun)
    path.offerGroup(at, last, around + inside, -period)
  }

  /**
   * Where groups may start: at the first place, at the last that still gives as many copies, and
   * between them where a run of like stitches begins. Elsewhere a group would have a copy less, or
   * cut a run in two, and neither saves a word.
   */
  #findStarts(from: number, to: number, depth: Depth): void {
    const found = starts[depth]
    found.begin(from, to)
    if (depth === 0) return
    for (let i = this.#repetitions.length - 1; i >= 0; i--) {
      const repetition = this.#repetitions[i] as Repetition
      const { period } = repetition
      const low = Math.max(repetition.from, from)
      const high = Math.min(repetition.to, to)
      if (high - low < period * 2) continue
      const last = low + ((high - low) % period)
      found.add(low, i, high)
      for (let at = num(this.#runEnd, low); at < last; at = num(this.#runEnd, at))
        found.add(at, i, high)
      if (last !== low) found.add(last, i, high)
    }
  }

  /** Less than the words of one copy of a group that starts at `from` never come to. */
  #least(from: number, period: number, depth: Depth): number {
    const plain = this.#plainCost(from, from + period)
    return this.#looksInside(period, depth, plain) ? leastWithGroup : plain
  }

  /** The words of one copy of a group that starts at `from`. */
  #blockCost(from: number, repetition: number, depth: Depth, insideRun: boolean): number {
    const { stitches } = this.#text
    const { period } = this.#repetitions[repetition] as Repetition
    let cuts = insideRun ? cut : 0
    if (period > 1 && stitches[from + period - 1] === stitches[from]) cuts += cut
    const plain = this.#plainCost(from, from + period)
    if (!this.#looksInside(period, depth, plain)) return plain + cuts
    const key = ((this.#same[repetition] as number) * 512 + (from % period)) * 4 + depth
    let cost = this.#blocks.get(key)
    if (cost === undefined) {
      cost = this.#solve(from, from + period, depth).cost(from)
      this.#blocks.set(key, cost)
    }
    return cost + cuts
  }

  /**
   * Is it worth looking for groups inside a group? In a row that repeats in very many ways only
   * short groups are looked into, so that the time stays bounded; the words are right all the same.
   */
  #looksInside(period: number, depth: Depth, plainCost: number): boolean {
    if (depth === 0 || plainCost < leastWithGroup) return false
    return this.#repetitions.length <= manyRepetitions || period <= shortGroup
  }

  /** The words of stitches from..to without any group. */
  #plainCost(from: number, to: number): number {
    const start = num(this.#runStart, to - 1)
    if (start <= from) return runCost(this.#text, from, to)
    const before = num(this.#plainFrom, from) - num(this.#plainFrom, start)
    return before + runCost(this.#text, start, to)
  }

  #parts(path: Path, from: number, to: number, depth: Depth): Shortened[] {
    return path.steps(from, to, this.#text.stitches).map((step) => this.#part(step, depth))
  }

  #block(from: number, period: number, depth: Depth): Shortened[] {
    const to = from + period
    const inside = this.#looksInside(period, depth, this.#plainCost(from, to)) ? depth : 0
    return this.#parts(this.#solve(from, to, inside), from, to, inside)
  }

  #part({ from, to, how }: PathStep, depth: Depth): Shortened {
    return how === 0
      ? { stitch: num(this.#text.stitches, from), count: to - from }
      : { parts: this.#block(from, how, (depth - 1) as Depth), times: (to - from) / how }
  }
}

/** Where the last whole copy ends. */
const lastCopy = (at: number, period: number, to: number): number =>
  at + period * Math.floor((to - at) / period)
