import type { Move } from '../../loom/move'
import type { Moment } from '../../loom/walk'

/** Which pegs a move touches, and what the hands use for it. Pegs are 0-based. */
export interface Acting {
  /** The peg at which it ends, or null where it is at no peg. */
  readonly peg: number | null
  readonly pegs: readonly number[]
  readonly tool: boolean
}

const at = (peg: number, tool: boolean): Acting => ({ peg, pegs: [peg], tool })
const nowhere: Acting = { peg: null, pegs: [], tool: false }

export function actingIn(move: Move | null): Acting {
  switch (move?.do) {
    case undefined:
    case 'turn':
    case 'carry':
      return nowhere
    case 'move':
    case 'draw':
      return { peg: move.to, pegs: [move.from, move.to], tool: true }
    case 'lay':
    case 'pass':
    case 'cast on':
      return at(move.peg, false)
    case 'work':
    case 'take':
    case 'put':
    case 'bar':
    case 'base':
    case 'lift':
    case 'let go':
    case 'drop':
      return at(move.peg, true)
  }
}

/**
 * Beside which end of the acting peg the tool is held: where work comes from, unless the yarn hangs there.
 * -1 towards lower peg numbers, +1 towards higher ones.
 */
export function toolStands({ move, heading, gap, stacks }: Moment): 1 | -1 {
  const comes = heading === 'forward' ? -1 : 1
  const { peg } = actingIn(move)
  if (peg === null) return comes
  // On a ring the gap after the last peg is the one before the first.
  const beside = comes < 0 ? peg : peg + 1
  return (beside - gap) % stacks.length === 0 ? (-comes as 1 | -1) : comes
}

/** Strands `from`..`to` (not included) of a stack that the last move put there; bottom is 0. */
export interface Fresh {
  readonly peg: number
  readonly from: number
  readonly to: number
}

/**
 * The strands that the move to this moment is about. Without the moment before it, all strands of
 * the peg that loops were moved to.
 */
export function freshStrands({ move, stacks }: Moment, before?: Moment): Fresh | null {
  if (!move) return null
  const { peg } = actingIn(move)
  if (peg === null) return null
  const count = stacks[peg]?.length ?? 0
  const top = (many: number): Fresh => ({ peg, from: Math.max(0, count - many), to: count })
  const bottom = (many: number): Fresh => ({ peg, from: 0, to: Math.min(many, count) })
  switch (move.do) {
    case 'lay':
      return move.as === 'wrap' ? bottom(1) : top(1)
    case 'move': {
      const moved = before?.stacks[move.from]?.length ?? count
      return move.under ? bottom(moved) : top(moved)
    }
    case 'put':
      return top(before?.needle[0]?.stack.length ?? count)
    case 'base':
      return bottom(1)
    case 'work':
    case 'draw':
    case 'bar':
    case 'cast on':
    case 'lift':
      return top(1)
    default:
      return null
  }
}
