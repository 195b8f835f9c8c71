import { cut, never, num, repeatCost, runCost, timesCost, word, type RowText } from './measure'
import { Path, type PathStep } from './path'
import { findRepetitions, type Repetition } from './repeats'

/** A stitch worked `count` times, or a group of parts worked `times` times. */
export type Part =
  | { readonly stitch: number; readonly count: number }
  | { readonly parts: readonly Part[]; readonly times: number }

/** A row in its shortest words: `before`, then *`block`; rep from * to last `lastLoops`, `after`. */
export interface Short {
  readonly before: readonly Part[]
  readonly block: readonly Part[] | null
  readonly after: readonly Part[]
  /** Loops that `after` takes. */
  readonly lastLoops: number
}

/** Groups may hold groups, no deeper than this: [k1, (p1, k1) 3 times] twice. */
const deepest = 2
const depthInStar = 1

const manyRepetitions = 80
const shortGroup = 16

interface Start {
  readonly period: number
  readonly to: number
}

interface Solution {
  readonly path: Path
  /** Groups that may start at each stitch, counted from the first. */
  readonly starts: readonly (readonly Start[] | undefined)[]
}

/**
 * The shortest words for a row. `withStar`: the row comes out at the end, so that "rep from * to
 * end" says how often. The asterisk is for a repeat that fills at least half the row.
 */
export function shorten(text: RowText, withStar: boolean): Short {
  const work = new Shortener(text)
  return work.shortest(withStar)
}

class Shortener {
  readonly #text: RowText
  readonly #count: number
  readonly #repetitions: readonly Repetition[]
  /** One past the last stitch of the run that a stitch belongs to. */
  readonly #runEnd: Int32Array
  readonly #loopsFrom: Int32Array
  readonly #blocks = new Map<number, number>()

  constructor(text: RowText) {
    const { stitches, counted, takes } = text
    const count = stitches.length
    this.#text = text
    this.#count = count
    this.#runEnd = new Int32Array(count)
    this.#loopsFrom = new Int32Array(count + 1)
    for (let i = count - 1; i >= 0; i--) {
      const same = i + 1 < count && stitches[i] === stitches[i + 1]
      this.#runEnd[i] = same ? num(this.#runEnd, i + 1) : i + 1
      this.#loopsFrom[i] = num(this.#loopsFrom, i + 1) + (takes[num(stitches, i)] ?? 0)
    }
    this.#repetitions = findRepetitions(stitches).filter(
      ({ from, period }) => period > 1 || !counted[num(stitches, from)],
    )
  }

  shortest(withStar: boolean): Short {
    const whole = this.#solve(0, this.#count, deepest)
    const starred = withStar ? this.#withStar(whole) : null
    if (!starred || starred.cost(0) >= whole.path.cost(0)) {
      const before = this.#parts(whole.path, 0, this.#count, deepest)
      return { before, block: null, after: [], lastLoops: 0 }
    }
    const steps = starred.steps(0, this.#count, this.#text.stitches)
    const star = steps.pop() as PathStep
    return {
      before: steps.map((step) => this.#part(step, deepest)),
      block: this.#block(star.from, -star.how, depthInStar),
      after: this.#parts(whole.path, star.to, this.#count, deepest),
      lastLoops: num(this.#loopsFrom, star.to),
    }
  }

  /** The cheapest ways with one asterisk: for each stitch, those that have it at or after there. */
  #withStar({ path: without, starts }: Solution): Path {
    const path = new Path(0, this.#count, never)
    this.#fill(path, 0, this.#count, starts, (at, { period, to }) => {
      const last = lastCopy(at, period, to)
      const rest = path.cost(last)
      if (period > 1 && rest < never)
        path.offerGroup(at, last, rest + this.#groupCost(at, last, period, deepest), period)
      const star = this.#starCost(at, last, period)
      if (star < never) path.offerGroup(at, last, star + without.cost(last), -period)
    })
    return path
  }

  /** The cheapest words of stitches from..to, without an asterisk. */
  #solve(from: number, to: number, depth: number): Solution {
    const path = new Path(from, to, 0)
    const starts = depth > 0 ? this.#starts(from, to) : []
    this.#fill(path, from, to, starts, (at, start) => {
      if (start.period === 1) return
      const last = lastCopy(at, start.period, start.to)
      const cost = path.cost(last) + this.#groupCost(at, last, start.period, depth)
      path.offerGroup(at, last, cost, start.period)
    })
    return { path, starts }
  }

  /** Fill a path from the last stitch back: groups by `offer`, and runs of like stitches. */
  #fill(
    path: Path,
    from: number,
    to: number,
    starts: Solution['starts'],
    offer: (at: number, start: Start) => void,
  ): void {
    let breaks: number[] = []
    for (let at = to - 1; at >= from; at--) {
      const here = starts[at - from]
      if (here) for (const start of here) offer(at, start)
      const end = Math.min(num(this.#runEnd, at), to)
      if (end === at + 1) breaks = []
      path.offerRun(at, end, path.cost(end) + runCost(this.#text, at, end))
      for (const next of breaks)
        path.offerRun(at, next, path.costWithGroup(next) + runCost(this.#text, at, next))
      if (here) breaks.push(at)
    }
  }

  #starCost(at: number, last: number, period: number): number {
    const loops = num(this.#loopsFrom, at) - num(this.#loopsFrom, at + period)
    const tail = num(this.#loopsFrom, last)
    if (loops === 0 || (last < this.#count && tail === 0)) return never
    if ((last - at) * 2 < this.#count) return never
    return repeatCost(last < this.#count ? tail : 0) + this.#blockCost(at, period, depthInStar)
  }

  /**
   * Where groups may start: at the first place, at the last that still gives as many copies, and
   * between them where a run of like stitches begins. Elsewhere a group would have a copy less, or
   * cut a run in two, and neither saves a word.
   */
  #starts(from: number, to: number): Start[][] {
    const starts: Start[][] = []
    for (const found of this.#repetitions) {
      const { period } = found
      if (period * 2 > to - from) break
      const low = Math.max(found.from, from)
      const high = Math.min(found.to, to)
      if (high - low < period * 2) continue
      const add = (at: number) => (starts[at - from] ??= []).push({ period, to: high })
      const last = low + ((high - low) % period)
      add(low)
      for (let at = num(this.#runEnd, low); at < last; at = num(this.#runEnd, at)) add(at)
      if (last !== low) add(last)
    }
    return starts
  }

  #groupCost(from: number, to: number, period: number, depth: number): number {
    return timesCost((to - from) / period) + this.#blockCost(from, period, depth - 1)
  }

  /** The words of one copy of a group that starts at `from`. */
  #blockCost(from: number, period: number, depth: number): number {
    const { stitches } = this.#text
    const first = num(stitches, from)
    let cuts = from > 0 && num(stitches, from - 1) === first ? cut : 0
    if (period > 1 && num(stitches, from + period - 1) === first) cuts += cut
    const key = (from * 512 + period) * 4 + depth
    let cost = this.#blocks.get(key)
    if (cost === undefined) {
      cost = this.#plainCost(from, from + period)
      if (this.#looksInside(period, depth, cost))
        cost = this.#solve(from, from + period, depth).path.cost(from)
      this.#blocks.set(key, cost)
    }
    return cost + cuts
  }

  /**
   * Is it worth looking for groups inside a group? Four runs are the least in which one can save
   * anything (a, b, a, b). In a row that repeats in very many ways only short groups are looked
   * into, so that the time stays bounded; the words are right all the same.
   */
  #looksInside(period: number, depth: number, plainCost: number): boolean {
    if (depth === 0 || plainCost < 4 * word) return false
    return this.#repetitions.length <= manyRepetitions || period <= shortGroup
  }

  #plainCost(from: number, to: number): number {
    let cost = 0
    for (let i = from; i < to;) {
      const end = Math.min(num(this.#runEnd, i), to)
      cost += runCost(this.#text, i, end)
      i = end
    }
    return cost
  }

  #parts(path: Path, from: number, to: number, depth: number): Part[] {
    return path.steps(from, to, this.#text.stitches).map((step) => this.#part(step, depth))
  }

  #block(from: number, period: number, depth: number): Part[] {
    const to = from + period
    const inside = this.#looksInside(period, depth, this.#plainCost(from, to)) ? depth : 0
    return this.#parts(this.#solve(from, to, inside).path, from, to, inside)
  }

  #part({ from, to, how }: PathStep, depth: number): Part {
    return how === 0
      ? { stitch: num(this.#text.stitches, from), count: to - from }
      : { parts: this.#block(from, how, depth - 1), times: (to - from) / how }
  }
}

/** Where the last whole copy ends. */
const lastCopy = (at: number, period: number, to: number): number =>
  at + period * Math.floor((to - at) / period)
