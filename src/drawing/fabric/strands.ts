import { runsRightToLeft } from '../../loom/direction'
import { waleOf } from '../../loom/strand'
import type { LoomSetup } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import { groupsOf } from '../../stitches/crosses'

/** Where a strand is first and last seen: row (0-based) and peg. */
export interface StrandEnds {
  readonly first: { readonly row: number; readonly peg: number }
  readonly last: { readonly row: number; readonly peg: number }
}

/** Where a wale begins and ends in some rows; null where it has no loop. */
export function strandEnds(rows: readonly PatternRun[], wale: number): StrandEnds | null {
  const pegIn = (run: PatternRun): number =>
    run.after.stacks.findIndex((stack) => waleOf(stack) === wale)
  const find = (runs: Iterable<[number, PatternRun]>): StrandEnds['first'] | null => {
    for (const [row, run] of runs) {
      const peg = pegIn(run)
      if (peg >= run.row.from && peg <= run.row.to) return { row, peg }
    }
    return null
  }
  const first = find(rows.entries())
  const last = find([...rows.entries()].reverse())
  return first && last ? { first, last } : null
}

/** The wale on a peg when a row is worked; -1 where the row leaves none. */
export const waleAt = ({ row, after }: PatternRun, peg: number): number =>
  peg < row.from || peg > row.to ? -1 : waleOf(after.stacks[peg] ?? [])

export interface CrossStrands {
  readonly front: readonly number[]
  readonly behind: readonly number[]
}

/** The wales of the cross that a row works over a peg; null where it works none there. */
export function crossStrands(
  run: PatternRun,
  peg: number,
  { direction }: Pick<LoomSetup, 'direction'>,
): CrossStrands | null {
  const site = run.row.sites.find(
    ({ peg: first, stitch }) => peg >= first && peg < first + stitch.width,
  )
  const cross = site?.stitch.cross
  if (!site || !cross) return null
  const groups = groupsOf(cross, runsRightToLeft(direction), 'after')
  const walesOf = (pegs: readonly number[]) =>
    pegs.map((offset) => waleAt(run, site.peg + offset)).filter((wale) => wale >= 0)
  return { front: walesOf(groups.front), behind: walesOf(groups.back) }
}
