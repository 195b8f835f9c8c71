import { strandOf } from '../../../loom/loom'
import type { How, Move } from '../../../loom/move'
import type { Side } from '../../../loom/state'
import { emptyStack, type Stack, type StrandKind } from '../../../loom/strand'
import type { Moment } from '../../../loom/walk'

/** One move, between the loom before it and the loom after it. */
export interface OneMove {
  readonly before: Moment
  readonly after: Moment
}

/** A peg while it is worked: its old loops are on the hook, nothing has left it yet. */
export interface Doing {
  readonly peg: number
  /** Bottom to top, the new strand among them. */
  readonly kinds: readonly StrandKind[]
  /** Place of the new strand, or of the loop that stays. */
  readonly stays: number
  /** Is it a strand of the working yarn, with no legs as yet? */
  readonly isYarn: boolean
  /** The hook comes up under the old loops, or down from above them. */
  readonly hook: 'up' | 'down'
  /** The old loops go over the head of the peg; else a new loop is drawn through them. */
  readonly goesOver: boolean
}

const fromAbove: readonly How[] = ['purl', 'twisted purl']
const drawnThrough: readonly How[] = ['true', ...fromAbove]

/** The peg of a move that lifts loops over or draws one through, while that is done; else null. */
export function doingIn({ before, after: { move } }: OneMove): Doing | null {
  if (move?.do !== 'work' && move?.do !== 'lift') return null
  const { peg } = move
  const old = (before.stacks[peg] ?? emptyStack).map(({ kind }) => kind)
  if (move.do === 'lift')
    return old.length < 2
      ? null
      : { peg, kinds: old, stays: old.length - 1, isYarn: false, hook: 'up', goesOver: true }
  if (old.length === 0) return null
  const down = fromAbove.includes(move.how)
  const made = strandOf[move.how] === 'twisted knit' ? 'twisted knit' : 'knit'
  return {
    peg,
    kinds: down ? [made, ...old] : [...old, made],
    stays: down ? 0 : old.length,
    isYarn: true,
    hook: down ? 'down' : 'up',
    goesOver: !drawnThrough.includes(move.how),
  }
}

/** Loops on the spare needle as a drawing shows them. */
export interface Held {
  readonly stack: Stack
  readonly side: Side
  /** `gone`: they were here and are on a peg again. */
  readonly look: 'there' | 'taken' | 'gone'
}

/** A move that takes loops off for a while, to put others or a strand under them. */
export const exchanged = ({ before, after: { move } }: OneMove): Stack => {
  const peg = exchangePeg(move)
  return peg === null ? emptyStack : (before.stacks[peg] ?? emptyStack)
}

const exchangePeg = (move: Move | null): number | null => {
  if (move?.do === 'move' && move.under) return move.to
  if (move?.do === 'pass') return move.yarn === 'outside' ? move.peg : null
  return move?.do === 'lay' && move.as === 'wrap' ? move.peg : null
}

/** What the spare needle shows for the moves of a figure: also what they took from it. */
export function heldIn(after: Moment, steps: readonly OneMove[]): readonly Held[] {
  const [first] = steps
  const only = steps.length === 1 ? first : undefined
  const away = only ? exchanged(only) : emptyStack
  if (away.length > 0 && after.needle.length === 0)
    return [{ stack: away, side: 'inside', look: 'gone' }]
  const gone = after.move?.do === 'put' && first ? first.before.needle : []
  const count = gone.length - after.needle.length
  const taken = after.move?.do === 'take' ? steps.length : 0
  return [
    ...gone.slice(0, Math.max(0, count)).map((one): Held => ({ ...one, look: 'gone' })),
    ...after.needle.map((one, index): Held => ({
      ...one,
      look: index >= after.needle.length - taken ? 'taken' : 'there',
    })),
  ]
}

const leftPeg = (move: Move | null): number | null => {
  if (move?.do === 'move') return move.from
  return move?.do === 'take' || move?.do === 'let go' || move?.do === 'drop' ? move.peg : null
}

/** Pegs that loops were taken off, with those loops; bare now. */
export function leftBare(after: Moment, steps: readonly OneMove[]): ReadonlyMap<number, Stack> {
  const bare = new Map<number, Stack>()
  for (const { before, after: next } of steps) {
    const { move } = next
    const peg = leftPeg(move)
    const stack = peg === null ? emptyStack : (before.stacks[peg] ?? emptyStack)
    if (peg === null || stack.length === 0 || (after.stacks[peg]?.length ?? 0) > 0) continue
    if (!bare.has(peg)) bare.set(peg, stack)
  }
  return bare
}
