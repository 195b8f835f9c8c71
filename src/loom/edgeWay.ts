import type { Heading } from './direction'
import type { BindOff, CastOn } from './move'
import type { LoomState } from './state'
import type { Habits } from './work'

/** The order in which an edge is worked. Pegs are 0-based. */
export interface EdgeWay {
  readonly pegs: readonly number[]
  readonly heading: Heading
  /** Does the yarn hang beside the first of them? */
  readonly beside: boolean
}

export interface EdgePlan {
  readonly before: LoomState
  readonly shape: Habits['shape']
  /** Pegs `from`..`to`, both included. */
  readonly from: number
  readonly to: number
  /** Where the whole of a round is folded to be joined: the first peg of one half; null: in its middle. */
  readonly fold?: number | null
}

/** Empty pegs outside its own pegs over which an edge may begin; more would leave a long strand. */
const mostEmptyBetween = 3

/**
 * Cast-on: from the end of its pegs beside which the yarn hangs. On an empty loom the yarn is brought
 * to it; the whole of a bar is cast on from the far end, so that work begins at peg 1. A drawstring
 * is woven there and back, and so begins where another cast-on ends.
 */
export function castOnWay(how: CastOn, plan: EdgePlan): EdgeWay {
  const { before, shape, from, to } = plan
  const pegs = Array.from({ length: to - from + 1 }, (_, step) => from + step)
  const whole = pegs.length === before.stacks.length
  const goesBack = how === 'drawstring'
  if (whole) return (shape === 'bar' && !goesBack ? back : forward)(pegs, true)
  if (!before.stacks.every(isEmpty)) return fromAnEnd(pegs, plan)
  return (goesBack ? back : forward)(pegs, true)
}

/**
 * Bind-off: the yarn, or its end, is worked on from where it hangs, whichever way it came (common
 * practice). A run of pegs begins at the end beside the yarn; the whole of a closed round begins
 * anywhere. What is gathered becomes a ring, so it may begin at any of its pegs. Two halves that are
 * joined begin at the end of the run or at the fold in its middle.
 */
export function bindOffWay(how: BindOff, plan: EdgePlan): EdgeWay {
  const { before, shape, from, to } = plan
  const pegs: number[] = []
  for (let peg = from; peg <= to; peg++) if (!isEmpty(before.stacks[peg])) pegs.push(peg)
  const round = shape === 'ring' && from === 0 && to === before.stacks.length - 1
  const way = fromAnEnd(pegs, plan)
  switch (how) {
    case 'graft':
    case 'three-needle':
      if (round && typeof plan.fold === 'number') return fromCorner(pegs, before, plan.fold)
      return way.beside ? way : (fromFold(pegs, before) ?? way)
    case 'gather':
      return round ? goRound(pegs, before) : way.beside ? way : (within(pegs, before) ?? way)
    default:
      return round ? goRound(pegs, before) : way
  }
}

const isEmpty = (stack?: readonly unknown[]): boolean => !stack || stack.length === 0

const forward = (pegs: readonly number[], beside: boolean): EdgeWay => ({
  pegs,
  heading: 'forward',
  beside,
})

const back = (pegs: readonly number[], beside: boolean): EdgeWay => ({
  pegs: pegs.toReversed(),
  heading: 'back',
  beside,
})

function fromAnEnd(pegs: readonly number[], plan: EdgePlan): EdgeWay {
  const { before } = plan
  const { gap } = before.yarn
  const onward = pegsBetween(gap, pegs[0], 'forward', plan)
  const backward = pegsBetween(gap, pegs.at(-1), 'back', plan)
  if (onward === null && backward === null)
    return (before.heading === 'forward' ? forward : back)(pegs, pegs.length === 0)
  if (onward === null) return back(pegs, true)
  if (backward === null || onward < backward) return forward(pegs, true)
  return onward === backward && gap < before.stacks.length ? forward(pegs, true) : back(pegs, true)
}

/** How many pegs the yarn passes on its way to `peg`; null where loops are in the way. */
function pegsBetween(
  gap: number,
  peg: number | undefined,
  heading: Heading,
  { before, shape, from, to }: EdgePlan,
): number | null {
  if (peg === undefined) return null
  const { length } = before.stacks
  const step = heading === 'forward' ? 1 : -1
  let outside = 0
  for (let passed = 0; passed < length; passed++) {
    const at = (heading === 'forward' ? gap : gap - 1) + step * passed
    const here = shape === 'ring' ? (at + 2 * length) % length : at
    if (here === peg) return passed
    if (here < 0 || here >= length || !isEmpty(before.stacks[here])) return null
    if ((here < from || here > to) && ++outside > mostEmptyBetween) return null
  }
  return null
}

/** Once round the loom, from the nearest loop; where both are as near, the way work goes. */
function goRound(pegs: readonly number[], { yarn, heading, stacks }: LoomState): EdgeWay {
  const { length } = stacks
  const { gap } = yarn
  const next = rotated(pegs, gap)
  const onward = ((next[0] ?? 0) - gap + 2 * length) % length
  const backward = (gap - 1 - (next.at(-1) ?? 0) + 2 * length) % length
  const atJoin: Heading | null = gap === 0 ? 'forward' : gap === length ? 'back' : null
  const goesOn = onward === backward ? (atJoin ?? heading) === 'forward' : onward < backward
  return (goesOn ? forward : back)(next, true)
}

/** Pegs of a run in a ring of their own, from the yarn on; null where it hangs outside the run. */
function within(pegs: readonly number[], { yarn, heading }: LoomState): EdgeWay | null {
  const [first = 0] = pegs
  if (yarn.gap <= first || yarn.gap > (pegs.at(-1) ?? 0)) return null
  return (heading === 'forward' ? forward : back)(rotated(pegs, yarn.gap), true)
}

/** From the middle of a run, where its halves are folded together: the two nearest pegs first. */
function fromFold(pegs: readonly number[], state: LoomState): EdgeWay | null {
  const before = pegs.filter((peg) => peg < state.yarn.gap).length
  return Math.abs(pegs.length - 2 * before) <= 1 ? within(pegs, state) : null
}

/** From the end of the fold that is nearer to the yarn; its two pegs are joined first. */
function fromCorner(pegs: readonly number[], { yarn, stacks }: LoomState, fold: number): EdgeWay {
  const { length } = stacks
  const near = pegs.findIndex((peg) => peg >= fold)
  const corners = [pegs[near], pegs[(near + pegs.length / 2) % pegs.length]]
  const away = (corner: number) => {
    const pegsAway = Math.abs(yarn.gap - corner) % length
    return Math.min(pegsAway, length - pegsAway)
  }
  const [corner = 0] = corners
    .filter((peg) => peg !== undefined)
    .toSorted((a, b) => away(a) - away(b))
  return forward(rotated(pegs, corner), away(corner) <= 1)
}

/** The same pegs in a ring, from the first at or after the gap. */
const rotated = (pegs: readonly number[], gap: number): readonly number[] => [
  ...pegs.filter((peg) => peg >= gap),
  ...pegs.filter((peg) => peg < gap),
]

/**
 * Where work goes after an edge that leaves the yarn in this gap: on a bar to where loops are, else as
 * before. `holds`: is there a loop on a peg?
 */
export function headingAfter(
  gap: number,
  { shape, pegs, heading }: { readonly shape: Habits['shape']; pegs: number; heading: Heading },
  holds: (peg: number) => boolean,
): Heading {
  if (shape === 'ring') return heading
  const holdsAny = (from: number, to: number): boolean => {
    for (let peg = from; peg < to; peg++) if (holds(peg)) return true
    return false
  }
  if (!holdsAny(0, gap)) return 'forward'
  return holdsAny(gap, pegs) ? heading : 'back'
}
