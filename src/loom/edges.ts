import type { Heading } from './direction'
import { bindOffWay, castOnWay, headingAfter, type EdgePlan, type EdgeWay } from './edgeWay'
import { Loom, type Fault } from './loom'
import type { BindOff, CastOn, Move } from './move'
import type { LoomState } from './state'
import { emptyStack } from './strand'
import type { Habits } from './work'

/** An edge, worked: loops put on or taken off. Pegs are 0-based. */
export interface EdgeRun {
  readonly habits: Habits
  readonly before: LoomState
  readonly after: LoomState
  readonly way: EdgeWay
  /** It is sewn with a new length of yarn: the yarn hangs elsewhere. */
  readonly newEnd: boolean
  /** Where the round is folded to be joined; null: in its middle. */
  readonly fold: number | null
  readonly faults: readonly Fault[]
}

type Recorder = (move: Move, loom: Loom) => void

/**
 * Cast on pegs `from`..`to`, from where the yarn is. The whole of a bar is cast on from the far end,
 * so that the yarn stands at peg 1; in the round it comes back to peg 1 by itself. A drawstring goes
 * there and back.
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
  const plan: EdgePlan = { before, shape: habits.shape, from, to }
  const way = castOnWay(how, plan)
  begin(loom, way)
  if (how === 'drawstring') weave(loom, way.pegs, habits.shape)
  else way.pegs.forEach((peg, index) => loom.castOn(peg, how, index === way.pegs.length - 1))
  if (way.pegs.length === loom.pegs) {
    loom.gap = 0
    loom.heading = 'forward'
  } else loom.heading = headingBehind(loom, plan)
  return edgeRun(loom, habits, before, way)
}

/**
 * In front of one peg and behind the next; a second time the other way: once more round the whole of
 * a ring, else on the way back (common practice). The strands behind can be drawn tight and are no floats.
 */
function weave(loom: Loom, pegs: readonly number[], shape: Habits['shape']): void {
  const infront = (peg: number) => loom.castOn(peg, 'drawstring')
  const behind = (peg: number) => {
    loom.pass(peg, 'inside')
    loom.float = 0
  }
  const first = new Set(pegs.filter((_, index) => index % 2 === 0))
  for (const peg of pegs) (first.has(peg) ? infront : behind)(peg)
  const closed = shape === 'ring' && pegs.length === loom.pegs
  if (!closed) loom.turn()
  for (const peg of closed ? pegs : pegs.toReversed()) (first.has(peg) ? behind : infront)(peg)
}

const headingBehind = (loom: Loom, { before: { heading }, shape }: EdgePlan): Heading =>
  headingAfter(
    loom.gap,
    { shape, pegs: loom.pegs, heading },
    (peg) => loom.stack(peg) !== emptyStack,
  )

/** Go the way of an edge; the yarn must hang beside its first peg. */
function begin(loom: Loom, { pegs, heading, beside }: EdgeWay): void {
  const [first] = pegs
  if (!beside && first !== undefined)
    loom.faults.push({ kind: 'start', peg: first, yarnGap: loom.gap })
  if (first !== undefined) loom.heading = heading
}

const edgeRun = (loom: Loom, habits: Habits, before: LoomState, way: EdgeWay): EdgeRun => ({
  habits,
  before,
  after: loom.settle(before),
  way,
  newEnd: false,
  fold: null,
  faults: loom.faults,
})

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
      const { gap } = loom
      if (near !== far) loom.letGo(far, 'graft')
      loom.gap = gap
    }
  },
}

/**
 * Bind off the pegs of `from`..`to` that hold loops, from where the yarn is. All ways but one work on
 * with the yarn or with its own end, cut long. Where the yarn hangs elsewhere a graft is sewn with a
 * new length (common practice), from the first loop on. A whole round that is joined in two halves is
 * folded at `fold`.
 */
export function bindOffPegs(
  before: LoomState,
  habits: Habits,
  how: BindOff,
  from: number,
  to: number,
  fold: number | null = null,
  record?: Recorder,
): EdgeRun {
  const loom = new Loom(before, habits.knit, record)
  const plan: EdgePlan = { before, shape: habits.shape, from, to, fold }
  const way = bindOffWay(how, plan)
  const newEnd = how === 'graft' && !way.beside
  begin(loom, newEnd ? { ...way, beside: true } : way)
  programs[how](loom, way.pegs)
  if (newEnd) loom.gap = before.yarn.gap
  loom.heading = headingBehind(loom, plan)
  return { ...edgeRun(loom, habits, before, way), newEnd, fold }
}
