import { Loom, type Fault } from './loom'
import type { BindOff, CastOn, Move } from './move'
import type { LoomState } from './state'
import type { Habits } from './work'

/** An edge, worked: loops put on or taken off. Pegs are 0-based. */
export interface EdgeRun {
  readonly before: LoomState
  readonly after: LoomState
  readonly faults: readonly Fault[]
}

type Recorder = (move: Move, loom: Loom) => void

/**
 * Cast on pegs `from`..`to`. On a bar the whole edge is cast on from the far end, so that the yarn
 * stands at peg 1; in the round it comes back to peg 1 by itself.
 */
export function castOnPegs(
  before: LoomState,
  habits: Habits,
  how: CastOn,
  from: number,
  to: number,
  record?: Recorder,
): EdgeRun {
  const loom = new Loom(before, habits.knit, record)
  const whole = from === 0 && to === loom.pegs - 1
  const fromFarEnd = whole && habits.shape === 'bar'
  loom.heading = fromFarEnd ? 'back' : 'forward'
  for (let step = 0; step <= to - from; step++)
    loom.castOn(fromFarEnd ? to - step : from + step, how)
  loom.heading = 'forward'
  if (whole) loom.gap = 0
  return { before, after: loom.settle(before), faults: loom.faults }
}

type Program = (loom: Loom, pegs: readonly number[]) => void

/** Each loop is put on the peg before, the lower one lifted over it; the last is drawn through. */
const chainOff =
  (again: boolean): Program =>
  (loom, pegs) => {
    pegs.forEach((peg, index) => {
      loom.work(peg)
      const last = pegs[index - 1]
      if (last !== undefined) {
        loom.move(peg, last)
        loom.lift(last)
        loom.move(last, peg)
      }
      if (again) loom.work(peg)
    })
    const end = pegs.at(-1)
    if (end !== undefined) loom.letGo(end, again ? 'elastic' : 'basic')
  }

const eachOff =
  (how: BindOff): Program =>
  (loom, pegs) =>
    pegs.forEach((peg) => loom.letGo(peg, how))

/** Pegs that lie across from one another: the first with the last, and so on inwards. */
const pairs = (pegs: readonly number[]): (readonly [number, number])[] =>
  pegs
    .slice(0, Math.ceil(pegs.length / 2))
    .map((peg, index) => [peg, pegs[pegs.length - 1 - index] as number])

const programs: Readonly<Record<BindOff, Program>> = {
  basic: chainOff(false),
  elastic: chainOff(true),
  sewn: eachOff('sewn'),
  gather: eachOff('gather'),
  'three-needle': (loom, pegs) => {
    const both = pairs(pegs)
    for (const [near, far] of both) {
      if (near === far) continue
      loom.take(far, 'inside')
      loom.put(near)
    }
    chainOff(false)(
      loom,
      both.map(([near]) => near),
    )
  },
  graft: (loom, pegs) => {
    for (const [near, far] of pairs(pegs)) {
      loom.letGo(near, 'graft')
      if (near !== far) loom.letGo(far, 'graft')
    }
  },
}

/** Bind off the pegs of `from`..`to` that hold loops, from where the yarn is onward. */
export function bindOffPegs(
  before: LoomState,
  habits: Habits,
  how: BindOff,
  from: number,
  to: number,
  record?: Recorder,
): EdgeRun {
  const loom = new Loom(before, habits.knit, record)
  const pegs: number[] = []
  for (let peg = from; peg <= to; peg++) if (loom.stack(peg).length > 0) pegs.push(peg)
  if (loom.heading === 'back') pegs.reverse()
  programs[how](loom, pegs)
  return { before, after: loom.settle(before), faults: loom.faults }
}
