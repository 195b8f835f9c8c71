import type { LoomState } from '../../loom/state'
import { emptyStack } from '../../loom/strand'
import { mostPegsPassed, type FloatSettings } from '../floats'
import type { LoomSetup, Run } from '../pattern'
import type { PatternRun } from '../work'

/** What says from how many empty pegs on a strand leaves a ladder. */
type Setting = FloatSettings & Pick<LoomSetup, 'shape' | 'pegs'>

/** Shared by all rows that pass none. */
export const nonePassed: readonly never[] = Object.freeze([])

/** A strand over so many neighbouring empty pegs shows as a ladder (common practice). */
const leastPegs = 2

/** In things for babies it may also pass no more pegs than a float: fingers are caught in it. */
const leastPegsIn = (setting: Setting): number =>
  setting.forBaby ? Math.min(leastPegs, mostPegsPassed(setting) + 1) : leastPegs

/**
 * Runs of empty pegs that the yarn passes in a row, between two loops, each long enough to show as a
 * ladder. A run over the join of the round begins before it, and its `to` counts on past the last peg.
 */
export function passedEmpty(run: PatternRun, setting: Setting): readonly Run[] {
  const { row, before, after, heading, miscount, loops } = run
  const width = row.to - row.from + 1
  // Where every peg holds a loop and every stitch leaves one there is nothing to pass.
  if (row.sites.length === 0 || miscount || (row.steady && loops === width)) return nonePassed
  const { length } = after.stacks
  const least = leastPegsIn(setting)
  let found: Run[] | undefined
  const add = (last: number, next: number): void => {
    if (next - last > least) (found ??= []).push({ from: last + 1, to: next - 1 })
  }
  let last: number | null = null
  for (let peg = row.from; peg <= row.to; peg++) {
    if (after.stacks[peg] === emptyStack) continue
    if (last !== null) add(last, peg)
    last = peg
  }
  if (!goesOnRound(run, setting)) return found ?? nonePassed
  // From the last loop of the round before to the first one of this round.
  const [end, start] =
    heading === 'forward'
      ? [lastHeld(before), firstHeld(after)]
      : [lastHeld(after), firstHeld(before)]
  if (end >= 0 && start >= 0) {
    if (end === length - 1) add(-1, start)
    else add(end, start + length)
  }
  return found ?? nonePassed
}

/** Does the row go on over the join, the way the round before it went? */
const goesOnRound = ({ row, before, heading }: PatternRun, { shape, pegs }: Setting): boolean =>
  shape === 'ring' &&
  row.from === 0 &&
  row.to === pegs - 1 &&
  before.heading === heading &&
  before.yarn.gap % pegs === 0

const isHeld = (stack: LoomState['stacks'][number]): boolean => stack !== emptyStack
const firstHeld = ({ stacks }: LoomState): number => stacks.findIndex(isHeld)
const lastHeld = ({ stacks }: LoomState): number => stacks.findLastIndex(isHeld)

/** Does the run lie over the join of the round, or beside it? */
export const atJoin = ({ from, to }: Run, pegs: number): boolean => from === 0 || to >= pegs - 1
