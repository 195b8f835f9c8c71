import type { Heading } from './direction'
import { emptyStack, single, strand, type Stack } from './strand'

export type Side = 'inside' | 'outside'

/** Where the yarn hangs: in gap g, that is between peg g-1 and peg g (0-based). */
export interface Yarn {
  readonly gap: number
  readonly side: Side
}

/**
 * The loom between two rows. Immutable; `stacks` has one entry per peg.
 * `float` and `inFront` count the pegs that the yarn has passed on the inside, on the outside, since it
 * was last caught or went to the other side.
 */
export interface LoomState {
  readonly stacks: readonly Stack[]
  readonly yarn: Yarn
  /** Which way work goes on unless a row says otherwise. */
  readonly heading: Heading
  readonly float: number
  readonly inFront: number
}

/** A loom with nothing on it yet, yarn at the start of the round. */
export const emptyLoom = (pegs: number): LoomState => ({
  stacks: Array.from({ length: pegs }, () => emptyStack),
  yarn: { gap: 0, side: 'inside' },
  heading: 'forward',
  float: 0,
  inFront: 0,
})

/** A loom with a loop cast on every peg. */
export const castOn = (pegs: number): LoomState => ({
  ...emptyLoom(pegs),
  stacks: Array.from({ length: pegs }, (_, peg) => single(strand('cast-on', peg))),
})

/** Same loops on the same pegs, same wales, same yarn: nothing later could tell them apart. */
export function sameState(a: LoomState, b: LoomState): boolean {
  if (a === b) return true
  if (a.heading !== b.heading || a.float !== b.float || a.inFront !== b.inFront) return false
  if (a.yarn.gap !== b.yarn.gap || a.yarn.side !== b.yarn.side) return false
  const { stacks } = a
  const others = b.stacks
  if (stacks.length !== others.length) return false
  for (let peg = 0; peg < stacks.length; peg++) if (stacks[peg] !== others[peg]) return false
  return true
}

export const pegsInWork = (state: LoomState): number => {
  let count = 0
  for (const stack of state.stacks) if (stack.length > 0) count++
  return count
}
