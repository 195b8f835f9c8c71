import { pegInLoom, turnPegOf } from '../../loom/rowEnd'
import { emptyStack, holdsTurn, isTurn, type Stack } from '../../loom/strand'
import type { Heading } from '../../loom/direction'
import type { Run } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import type { Setting } from '../setting'

/** How a row stands to the turns before it. Pegs are 0-based. */
export interface Turning {
  readonly heading: Heading
  readonly pegs: Run
  readonly german: boolean
  /** The peg that gets the strand: -1 or the peg count when a wrap goes round the join; null: no turn. */
  readonly turnPeg: number | null
  /** Does that peg already hold a strand of an earlier turn, before this row? */
  readonly held: boolean
  /** Pegs with strands of earlier turns that the row works on its way, in working order. */
  readonly worked: readonly number[]
  /** Nearest peg beyond the turn that holds a strand of an earlier one; null: none. */
  readonly beyond: number | null
  /** The loom noticed a strand that was still on the peg when its turn was laid. */
  readonly faulty: boolean
}

/** A stack that holds a wrap under its loop holds a turn even when the loop has been worked off. */
const turned = (stack: Stack | undefined): boolean =>
  stack !== undefined && stack !== emptyStack && (holdsTurn(stack) || stack.every(isTurn))

/** null for a row over all the pegs that does not turn, and for one that works no peg. */
export function turningOf(
  { row, before: { stacks }, heading, faults }: PatternRun,
  { pegs, shape }: Setting,
): Turning | null {
  if (row.sites.length === 0) return null
  if (row.end === 'on' && row.from === 0 && row.to >= pegs - 1) return null
  const forward = heading === 'forward'
  const step = forward ? 1 : -1
  const turnPeg = turnPegOf(row, heading)
  const worked: number[] = []
  for (let peg = forward ? row.from : row.to; peg >= row.from && peg <= row.to; peg += step)
    if (peg !== turnPeg && turned(stacks[peg])) worked.push(peg)
  let beyond: number | null = null
  if (turnPeg !== null)
    for (let peg = turnPeg + step; beyond === null && peg >= 0 && peg < pegs; peg += step)
      if (turned(stacks[peg])) beyond = peg
  const inLoom = turnPeg === null ? -1 : pegInLoom(turnPeg, { shape, pegs })
  return {
    heading,
    pegs: { from: row.from, to: row.to },
    german: row.end === 'German turn',
    turnPeg,
    held: turned(stacks[inLoom]),
    worked,
    beyond,
    faulty: faults.some(({ kind }) => kind === 'turned twice'),
  }
}
