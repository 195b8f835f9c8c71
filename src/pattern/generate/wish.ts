import type { LoomSetup, Run, ShortRowWish } from '../pattern'

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
    beside: null,
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
