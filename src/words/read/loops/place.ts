import { opposite, type Heading } from '../../../loom/direction'
import { bindOffPegs, castOnPegs } from '../../../loom/edges'
import type { BindOff } from '../../../loom/move'
import type { LoomRow, RowEnd } from '../../../loom/row'
import { afterRow, gapBehind } from '../../../loom/rowEnd'
import { castOn, emptyLoom, type LoomState } from '../../../loom/state'
import { emptyStack, noWale, type Stack } from '../../../loom/strand'
import { workRow, type Habits } from '../../../loom/work'
import type { Run } from '../../../pattern/pattern'
import type { Texture } from '../../../stitches/stitch'
import { readLimits } from '../limits'

/** The loom between two rows, with one plain loop on each peg that holds any. The same object for the same loom. */
export interface LoomThen extends LoomState {
  /** Pegs with a loop. */
  readonly loops: number
}

/** How the loops of a peg look on the right side: the lowest shows. */
export function lookOf(stack: Stack): Texture {
  const { kind } = stack.find(({ wale }) => wale !== noWale) ?? {}
  return kind === 'purl' || kind === 'twisted purl' ? 'purl' : 'knit'
}

/** Looms by what they are, so that equal ones are the same object. */
export class Places {
  readonly #known = new Map<string, LoomThen>()
  readonly #full = new Map<number, readonly Stack[]>()
  #longest: readonly Stack[] = []

  readonly habits: Habits

  constructor({ shape, direction, knit }: Pick<Habits, 'shape' | 'direction' | 'knit'>) {
    // Neither way of crossing nor of stacking decreases moves a loop to another peg.
    this.habits = { shape, direction, knit, crossing: 'knit then move', transfer: 'plain' }
  }

  of({ stacks, yarn, heading }: Pick<LoomState, 'stacks' | 'yarn' | 'heading'>): LoomThen {
    let loops = 0
    for (const stack of stacks) if (stack !== emptyStack) loops++
    const isFull = loops === stacks.length
    let key = `${yarn.gap}/${heading}/${isFull ? `all ${loops}` : ''}`
    if (!isFull) for (const stack of stacks) key += stack === emptyStack ? '0' : '1'
    let place = this.#known.get(key)
    if (!place) {
      const full = this.#fullLoom(stacks.length)
      place = {
        stacks: isFull
          ? full
          : stacks.map((stack, peg) => (stack === emptyStack ? stack : (full[peg] ?? stack))),
        yarn: { gap: yarn.gap, side: 'inside' },
        heading,
        float: 0,
        inFront: 0,
        loops,
      }
      this.#known.set(key, place)
    }
    return place
  }

  /** A plain loop on each of so many pegs: the same list when it is asked for again. */
  #fullLoom(pegs: number): readonly Stack[] {
    let full = this.#full.get(pegs)
    if (!full) {
      if (this.#longest.length < pegs) this.#longest = castOn(2 * pegs).stacks
      this.#full.set(pegs, (full = this.#longest.slice(0, pegs)))
    }
    return full
  }

  start(pegs: number): LoomThen {
    return this.of({ ...emptyLoom(0), stacks: this.#fullLoom(pegs) })
  }

  /** The same loom with the yarn elsewhere. */
  at(place: LoomThen, gap: number, heading = place.heading): LoomThen {
    return this.of({ ...place, yarn: { gap, side: 'inside' }, heading })
  }

  /** A loom of so many loops instead, the yarn at the start of a row; as it is where no row has so many. */
  withLoops(place: LoomThen, loops: number): LoomThen {
    if (loops === place.loops || loops > readLimits.stitches) return place
    return this.at(this.start(Math.max(1, loops)), 0, place.heading)
  }

  after(place: LoomThen, row: LoomRow): LoomThen {
    return this.of(workRow(place, row, this.habits).after)
  }

  /** Loops put on or taken off the pegs `from`..`to`. */
  edge(
    before: LoomState,
    does: 'cast on' | 'bind off',
    how: BindOff | null,
    from: number,
    to: number,
  ): LoomThen {
    return this.of(
      does === 'cast on'
        ? castOnPegs(before, this.habits, 'e-wrap', from, to).after
        : bindOffPegs(before, this.habits, how ?? 'basic', from, to).after,
    )
  }

  /** After a row of which only the number of loops that it leaves is known. */
  afterUnlaid(place: LoomThen, covers: Run, goes: Heading, end: RowEnd, loops: number): LoomThen {
    const { shape } = this.habits
    const { gap, heading } = afterRow({ ...covers, end }, goes, { shape, pegs: pegsOf(place) })
    const left = loops === place.loops ? place : this.start(Math.max(1, loops))
    return this.at(left, Math.min(gap, pegsOf(left)), heading)
  }

  /** After a row that went on over the join of a ring, by so many pegs. */
  overJoin(place: LoomThen, goes: Heading, end: RowEnd, over: number, turned: boolean): LoomThen {
    // The yarn of a German turn hangs before the peg that it lies on.
    const beyond = Math.max(0, end === 'German turn' ? over - 1 : over)
    const gap = goes === 'forward' ? beyond : pegsOf(place) - beyond
    const heading = turned ? opposite(goes) : goes
    return this.at(place, Math.min(Math.max(0, gap), pegsOf(place)), heading)
  }

  /** A plain turn: back the other way from where the row ended. */
  turned(place: LoomThen, went: Heading, covers: Run): LoomThen {
    return this.at(place, Math.min(gapBehind(covers, went), pegsOf(place)), opposite(went))
  }
}

export const pegsOf = ({ stacks }: LoomThen): number => stacks.length

const holdsLoop = ({ stacks }: LoomThen, peg: number): boolean => stacks[peg] !== emptyStack

/** Loops on pegs from..to. */
export function loopsOn(place: LoomThen, from: number, to: number): number {
  let loops = 0
  for (let peg = Math.max(0, from); peg <= Math.min(pegsOf(place) - 1, to); peg++)
    if (holdsLoop(place, peg)) loops++
  return loops
}

/** The pegs from the yarn on, in the way work goes, that hold so many loops; null if too few do. */
export function fromYarn(place: LoomThen, goes: Heading, loops: number): Run | null {
  const { gap } = place.yarn
  const step = goes === 'forward' ? 1 : -1
  const start = goes === 'forward' ? gap : gap - 1
  let found = 0
  for (let peg = start; peg >= 0 && peg < pegsOf(place); peg += step) {
    if (holdsLoop(place, peg)) found++
    if (found === loops)
      return goes === 'forward' ? { from: start, to: peg } : { from: peg, to: start }
  }
  return null
}

/** The stacks that a row comes to, in the order it is worked. `whole`: it works all of them. */
export function stacksAhead(
  place: LoomThen,
  { run, goes, whole }: { run: Run | null; goes: Heading; whole: boolean },
): readonly Stack[] {
  const { gap } = place.yarn
  const forward = goes === 'forward'
  const all = { from: 0, to: pegsOf(place) - 1 }
  const atEdge = whole || gap === 0 || gap === pegsOf(place)
  const ahead = forward ? { from: gap, to: all.to } : { from: 0, to: gap - 1 }
  const { from, to } = run ?? (atEdge ? all : ahead)
  const stacks = place.stacks.slice(Math.max(0, from), to + 1).filter((one) => one !== emptyStack)
  return forward ? stacks : stacks.reverse()
}
