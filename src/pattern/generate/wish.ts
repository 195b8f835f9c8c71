import type { RowEnd } from '../../loom/row'
import type { LoomSetup, Run } from '../pattern'

export const shortRowShapes = ['heel', 'toe', 'wedge'] as const
export const shortRowSides = ['both', 'first', 'last'] as const

/** What short rows should be like. Pegs are 0-based. */
export interface ShortRowWish {
  /**
   * heel: in and out again, a cup; toe: the same, but it ends with its last short row, to be grafted; wedge: in
   * only, then all are taken in.
   */
  readonly shape: (typeof shortRowShapes)[number]
  readonly turn: Exclude<RowEnd, 'on'>
  /** The pegs it lies on. */
  readonly run: Run
  /** Pegs turned at each side. */
  readonly turned: number
  /** From one turned peg to the next. */
  readonly step: number
  /** At which ends of the run work turns: both, or on a bar the first or the last peg only. */
  readonly sides: (typeof shortRowSides)[number]
  /** A heel turns once more on the peg beyond each end, so that no hole stays. */
  readonly closeCorners: boolean
}

export const pegsIn = ({ from, to }: Run): number => to - from + 1

/**
 * A heel for this loom (common practice): half the pegs, about a third of them turned at each side,
 * the middle never. It begins on peg 2, so that both its corners belong to the same round.
 */
export function usualHeel(loom: Pick<LoomSetup, 'pegs' | 'shape'>): ShortRowWish {
  const half = Math.max(1, Math.floor(loom.pegs / 2))
  const fits = loom.pegs >= half + 2
  const from = fits ? 1 : 0
  const run = { from, to: from + half - 1 }
  return {
    shape: 'heel',
    turn: 'German turn',
    run,
    turned: usualTurns(run),
    step: 1,
    sides: 'both',
    closeCorners: fits,
  }
}

/** About a third of the pegs (common practice), and one peg at least is left in the middle. */
export const usualTurns = (run: Run, step = 1): number =>
  Math.max(1, Math.min(Math.round(pegsIn(run) / 3 / step), mostTurns(run, step, 'both')))

/** Most pegs that can be turned at each side and leave a peg in the middle; 0: none. */
export function mostTurns(run: Run, step: number, sides: ShortRowWish['sides']): number {
  const free = pegsIn(run) - 1
  const perSide = sides === 'both' ? Math.floor(free / 2) : free
  return perSide < 1 ? 0 : Math.floor((perSide - 1) / step) + 1
}
