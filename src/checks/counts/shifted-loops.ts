import { drifts, inOrder } from '../../loom/gather'
import type { Layout } from '../../pattern/layout'
import type { Run } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import { keepsItsLoop } from '../../stitches/stitch'
import { inFirstCopy } from '../copies'

/**
 * More plain stitches than this between a decrease and its increase look like an accident. Lace in
 * the books of the trade keeps the two at most nine apart (My Knitting Book, London 1843; Handbook
 * of Wool Knitting and Crochet, 1918).
 */
const longestMeant = 12

export interface ShiftedLoops {
  readonly pegs: Run
  /** How many pegs away from their own the loops are worked. */
  readonly by: number
}

/** Long stretches of plain stitches that work shifted loops; null when no loop is shifted. */
export function shiftedLoops(run: PatternRun, layout: Layout): ShiftedLoops[] | null {
  // Where every peg holds a loop and every stitch works its own, none can be shifted.
  const { steady, from, to } = run.row
  if (steady && run.loops === to - from + 1) return null
  const sites = inOrder(run.row, run.heading)
  const drift = drifts(run.before, run.row, run.heading)
  if (drift.every((value) => value === 0)) return null
  const found: ShiftedLoops[] = []
  for (let start = 0; start < sites.length;) {
    const by = drift[start] ?? 0
    let end = start
    while (end < sites.length && drift[end] === by && isPlain(sites[end])) end++
    const first = sites[start]?.peg ?? 0
    const last = sites[end - 1]?.peg ?? 0
    const pegs = { from: Math.min(first, last), to: Math.max(first, last) }
    if (by !== 0 && end - start > longestMeant && inFirstCopy(layout, pegs.from))
      found.push({ pegs, by: Math.abs(by) })
    start = Math.max(end, start + 1)
  }
  return found
}

const isPlain = (site: ReturnType<typeof inOrder>[number] | undefined): boolean =>
  site !== undefined && keepsItsLoop(site.stitch)
