import { emptyStack, noWale, waleOf } from '../../loom/strand'
import type { PatternRun } from '../../pattern/work'
import type { Cross, Stitch } from '../../stitches/stitch'
import { lookOf } from '../look'
import { nothing } from '../nothing'

/** A cross as it was worked: where, and which strands it has moved. */
export interface Crossed {
  /** Lowest peg, 0-based. */
  readonly peg: number
  readonly stitch: Stitch
  readonly cross: Cross
  /** Wales of the strands, in peg order after crossing. */
  readonly wales: readonly number[]
}

export function crossesIn({ row, after }: PatternRun): readonly Crossed[] {
  const { crosses } = lookOf(row)
  if (crosses.length === 0) return nothing
  const list: Crossed[] = []
  for (const { stitch, peg } of crosses) {
    if (!stitch.cross) continue
    const wales: number[] = []
    for (let at = peg; at < peg + stitch.width; at++) {
      const wale = waleOf(after.stacks[at] ?? emptyStack)
      if (wale !== noWale) wales.push(wale)
    }
    list.push({ peg, stitch, cross: stitch.cross, wales })
  }
  return list
}
