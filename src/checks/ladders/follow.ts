import type { LoomState } from '../../loom/state'
import { emptyStack } from '../../loom/strand'
import type { Run } from '../../pattern/pattern'

/** What was worked, as ladders see it: a row or an edge. */
export interface Passing {
  readonly after: LoomState
  /** Runs of empty pegs that the yarn passed; they may count on over the join of the round. */
  readonly passed: readonly Run[]
}

/** Strands over the same empty pegs, one above the other. `first`, `widestAt` and `rows` count passings. */
export interface Ladder {
  readonly first: number
  readonly pegs: Run
  readonly widestAt: number
  readonly widest: Run
  /** How many rows pass these pegs. */
  readonly rows: number
}

interface Growing {
  readonly first: number
  readonly pegs: Run
  widestAt: number
  widest: Run
  rows: number
}

/** Where a ladder was passed last. */
interface Passed {
  readonly ladder: Growing
  readonly at: number
  readonly run: Run
}

/**
 * Ladders from where they begin. One goes on as long as pegs of it stay empty, also through rows that do not
 * come there; its pegs may become more and fewer meanwhile.
 */
export function followLadders(list: readonly Passing[]): readonly Ladder[] {
  const ladders: Growing[] = []
  let known: readonly Passed[] = []
  for (let at = 0; at < list.length; at++) {
    const runs = list[at]?.passed ?? []
    if (runs.length === 0) continue
    const here = runs.map((run): Passed => {
      const goingOn = known.find((passed) => goesOn(list, passed, run, at))?.ladder
      if (goingOn) return { ladder: goingOn, at, run }
      const ladder = { first: at, pegs: run, widestAt: at, widest: run, rows: 0 }
      ladders.push(ladder)
      return { ladder, at, run }
    })
    for (const { ladder, run } of here)
      if (widthOf(run) > widthOf(ladder.widest))
        Object.assign(ladder, { widest: run, widestAt: at })
    const passedHere = new Set(here.map(({ ladder }) => ladder))
    for (const ladder of passedHere) ladder.rows++
    known = [...here, ...known.filter(({ ladder }) => !passedHere.has(ladder))]
  }
  return ladders
}

/** Was none of its pegs emptied by these rows, on a loom that was so before the first of them? */
export const isFromBefore = ({ first, pegs }: Ladder, { stacks }: LoomState): boolean =>
  first === 0 && sharedPegs(pegs, pegs, stacks.length).every((peg) => stacks[peg] === emptyStack)

export const widthOf = ({ from, to }: Run): number => to - from + 1

/** Do the runs share a peg that has stayed empty since the ladder was last passed? */
function goesOn(list: readonly Passing[], before: Passed, run: Run, at: number): boolean {
  const shared = sharedPegs(before.run, run, list[at]?.after.stacks.length ?? 1)
  return shared.some((peg) => {
    for (let between = before.at + 1; between < at; between++)
      if (list[between]?.after.stacks[peg] !== emptyStack) return false
    return true
  })
}

export function sharedPegs(a: Run, b: Run, pegs: number): readonly number[] {
  const shared: number[] = []
  for (let peg = a.from; peg <= a.to; peg++) {
    const one = peg % pegs
    if ((one >= b.from && one <= b.to) || one + pegs <= b.to) shared.push(one)
  }
  return shared
}
