import { opposite, type Heading } from '../../../loom/direction'
import { afterRow, gapBehind, pegInLoom, turnPegOf } from '../../../loom/rowEnd'
import type { RowEnd } from '../../../loom/row'
import type { Run } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import { readLimits } from '../limits'

/** Stitches on their pegs, in working order. `peg` is the lowest peg of the stitch. */
export interface Laid {
  readonly sites: readonly { readonly stitch: Stitch; readonly peg: number }[]
  /** Every stitch takes and leaves the loops of its own pegs. */
  readonly steady: boolean
  /** The stitches take another number of loops than there are. */
  readonly miscount: boolean
}

/** The loom between two rows, as far as words need it. The same object for the same loom. */
export interface LoomThen {
  readonly pegs: number
  /** One entry a peg: 1 for a loop; null when every peg has one. */
  readonly occupied: Uint8Array | null
  readonly loops: number
  /** The yarn hangs before this peg (0-based). */
  readonly gap: number
  readonly heading: Heading
}

/** Places by what they are, so that equal ones are the same object. */
export class Places {
  readonly #known = new Map<string, LoomThen>()

  of(pegs: number, occupied: Uint8Array | null, gap: number, heading: Heading): LoomThen {
    let loops = pegs
    if (occupied) loops = occupied.reduce((sum, one) => sum + one, 0)
    const full = loops === pegs
    const key = `${pegs}/${gap}/${heading}/${full || !occupied ? '' : occupied.join('')}`
    let place = this.#known.get(key)
    if (!place) {
      place = { pegs, occupied: full ? null : occupied, loops, gap, heading }
      this.#known.set(key, place)
    }
    return place
  }

  start(pegs: number): LoomThen {
    return this.of(pegs, null, 0, 'forward')
  }

  /** The same loom with so many loops, the yarn at the start of a row; as it is where no row has so many. */
  withLoops(place: LoomThen, loops: number): LoomThen {
    if (loops > readLimits.stitches) return place
    return loops === place.loops ? place : this.of(Math.max(1, loops), null, 0, place.heading)
  }

  /** After a row that covered `covers`; `laid` null: only the number of loops is known. */
  after(
    place: LoomThen,
    shape: 'ring' | 'bar',
    covers: Run,
    goes: Heading,
    end: RowEnd,
    laid: Laid | null,
    loops: number,
  ): LoomThen {
    const row = { ...covers, end }
    const setting = { shape, pegs: place.pegs }
    let { pegs, occupied } = place
    if (laid) occupied = laid.steady ? occupied : this.#occupiedAfter(place, laid)
    else if (loops !== place.loops) {
      pegs = Math.max(1, loops)
      occupied = null
    }
    const turn = turnPegOf(row, goes)
    if (turn !== null) occupied = withLoop(occupied, pegInLoom(turn, setting))
    const { gap, heading } = afterRow(row, goes, setting)
    return this.of(pegs, occupied, Math.min(gap, pegs), heading)
  }

  /** After a row that went on over the join of a ring, by so many pegs. */
  overJoin(place: LoomThen, goes: Heading, end: RowEnd, over: number, turned: boolean): LoomThen {
    const { pegs, occupied } = place
    // The yarn of a German turn hangs before the peg that it lies on.
    const beyond = Math.max(0, end === 'German turn' ? over - 1 : over)
    const gap = goes === 'forward' ? beyond : pegs - beyond
    return this.of(pegs, occupied, Math.min(Math.max(0, gap), pegs), turned ? opposite(goes) : goes)
  }

  /** A plain turn: back the other way from where the row ended. */
  turned(place: LoomThen, went: Heading, covers: Run): LoomThen {
    const gap = Math.min(gapBehind(covers, went), place.pegs)
    return this.of(place.pegs, place.occupied, gap, opposite(went))
  }

  #occupiedAfter(place: LoomThen, laid: Laid): Uint8Array {
    const occupied = place.occupied?.slice() ?? new Uint8Array(place.pegs).fill(1)
    for (const { stitch, peg } of laid.sites) {
      // A peg that is passed keeps what it has.
      if (stitch.passes && laid.miscount) continue
      occupied.fill(stitch.makes > 0 ? 1 : 0, peg, peg + stitch.width)
    }
    return occupied
  }
}

function withLoop(occupied: Uint8Array | null, peg: number): Uint8Array | null {
  // A wrap beyond the pegs of a bar lies nowhere.
  if (!occupied || occupied[peg] !== 0) return occupied
  const copy = occupied.slice()
  copy[peg] = 1
  return copy
}

/** Loops on pegs from..to. */
export function loopsOn({ occupied, pegs }: LoomThen, from: number, to: number): number {
  const first = Math.max(0, from)
  const last = Math.min(pegs - 1, to)
  if (!occupied) return Math.max(0, last - first + 1)
  let loops = 0
  for (let peg = first; peg <= last; peg++) loops += occupied[peg] ?? 0
  return loops
}

/** The pegs from the yarn on, in the way work goes, that hold so many loops; null if too few do. */
export function fromYarn(place: LoomThen, goes: Heading, loops: number): Run | null {
  const step = goes === 'forward' ? 1 : -1
  const start = goes === 'forward' ? place.gap : place.gap - 1
  let found = 0
  for (let peg = start; peg >= 0 && peg < place.pegs; peg += step) {
    found += place.occupied ? (place.occupied[peg] ?? 0) : 1
    if (found === loops)
      return goes === 'forward' ? { from: start, to: peg } : { from: peg, to: start }
  }
  return null
}

/** Which of the loops on the loom, in peg order, is the nth that a row comes to, from 0. */
export function loopAt(
  place: LoomThen,
  { run, goes, whole }: { run: Run | null; goes: Heading; whole: boolean },
  nth: number,
): number {
  const { gap, pegs, loops } = place
  const forward = goes === 'forward'
  const atEdge = whole || gap === 0 || gap === pegs
  const before = run
    ? loopsOn(place, 0, (forward ? run.from : run.to + 1) - 1)
    : atEdge
      ? forward
        ? 0
        : loops
      : loopsOn(place, 0, gap - 1)
  return forward ? before + nth : before - 1 - nth
}
