import type { Moment } from './walk'

/** Moves `from`..`to` of a list of moments, 0-based, both included: move m leads to moment m + 1. */
export interface MoveRun {
  readonly from: number
  readonly to: number
}

/** The moment after the first move of the stitch on a peg; where none is, of the nearest one. */
export function firstAt(moments: readonly Moment[], peg: number): number {
  let best = 0
  let least = Infinity
  for (let index = 1; index < moments.length; index++) {
    const away = distance(moments[index] as Moment, peg)
    if (away < least) {
      best = index
      least = away
      if (away === 0) break
    }
  }
  return best
}

function distance({ site, move }: Moment, peg: number): number {
  if (site) return Math.max(0, site.peg - peg, peg - (site.peg + site.stitch.width - 1))
  // A turn's strand lies on a peg that has a stitch of its own.
  return move && 'peg' in move ? Math.abs(move.peg - peg) + 0.5 : Infinity
}

/** The moves of the stitch that a moment belongs to; before the first move, of the first stitch. */
export function stitchAround(moments: readonly Moment[], at: number): MoveRun | null {
  const index = Math.max(1, at)
  const moment = moments[index]
  if (!moment) return null
  let from = index
  let end = index
  while (from > 1 && moments[from - 1]?.site === moment.site) from--
  while (end < moments.length - 1 && moments[end + 1]?.site === moment.site) end++
  return { from: from - 1, to: end - 1 }
}
