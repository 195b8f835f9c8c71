import { runsRightToLeft } from './direction'
import { Loom } from './loom'
import { workStitch } from './workStitch'
import { sitesByPeg, type LoomRow, type Site } from './row'
import type { LoomState } from './state'
import { emptyStack } from './strand'
import type { Habits, RowRun } from './work'

/** Sites `first`..`last` of a list; none when last < first. */
interface SiteRange {
  readonly first: number
  readonly last: number
}

/**
 * Work a row again after a small change, from how it was worked before: only the stitches that
 * differ, or whose loops do. Gives null where more than those stitches could be touched (loops
 * are moved, begin or end, the count is off, the row turns); then the row must be worked whole.
 * The result is the one that working it whole would give.
 */
export function reworkRow<R extends LoomRow>(
  before: LoomState,
  row: R,
  habits: Habits,
  old: RowRun<R>,
): RowRun<R> | null {
  if (!row.steady || !old.row.steady || old.miscount) return null
  if (row.from !== old.row.from || row.to !== old.row.to) return null
  // Beside a short row, loops may have changed that its old run does not know.
  if (row.from > 0 || row.to < before.stacks.length - 1) return null
  if (row.end !== 'on' || old.row.end !== 'on') return null
  if ((row.heading ?? before.heading) !== old.heading) return null
  const { yarn } = old.before
  if (before.yarn.gap !== yarn.gap || before.yarn.side !== yarn.side) return null
  if (before.float !== 0 || old.before.float !== 0) return null
  if (before.inFront !== 0 || old.before.inFront !== 0) return null
  if (old.faults.some(({ kind }) => kind === 'start')) return null

  const stretch = changedSites(before, row, old)
  if (!stretch) return null
  return workStretch(before, row, habits, old, stretch)
}

/** The stitches to work again, in peg order: from one that catches the yarn to one that does. */
function changedSites(before: LoomState, row: LoomRow, old: RowRun): SiteRange | null {
  const { sites } = row
  const were = old.row.sites
  const shift = were.length - sites.length
  let first = 0
  let last = sites.length - 1
  if (row !== old.row) {
    const most = Math.min(sites.length, were.length)
    while (first < most && sameSite(sites[first], were[first])) first++
    while (last >= first && last + shift >= first && sameSite(sites[last], were[last + shift]))
      last--
  } else first = sites.length
  let low = first <= last ? (sites[first] as Site).peg : Infinity
  let high = first <= last ? endOf(sites[last] as Site) : -Infinity
  const { stacks } = before
  for (let peg = row.from; peg <= row.to; peg++) {
    const stack = stacks[peg]
    if (stack === emptyStack) return null
    if (stack === old.before.stacks[peg]) continue
    if (peg < low) low = peg
    if (peg > high) high = peg
  }
  if (low > high) return first <= last ? null : { first: 0, last: -1 }
  first = Math.max(0, sitesByPeg.left(sites, low + 1) - 1)
  last = sitesByPeg.left(sites, high + 1) - 1
  return widen(sites, were, first, last, shift)
}

/** Widen until no float can reach in or out, on either side, before or after the change. */
function widen(
  sites: readonly Site[],
  were: readonly Site[],
  first: number,
  last: number,
  shift: number,
): SiteRange {
  const floats = (site: Site | undefined): boolean => site?.stitch.passes === true
  while (first > 0 && (floats(sites[first]) || floats(were[first]) || floats(sites[first - 1])))
    first--
  while (
    last < sites.length - 1 &&
    (floats(sites[last]) || floats(were[last + shift]) || floats(sites[last + 1]))
  )
    last++
  return { first, last }
}

const endOf = ({ peg, stitch }: Site): number => peg + stitch.width - 1

const sameSite = (a: Site | undefined, b: Site | undefined): boolean =>
  a === b || (a?.stitch === b?.stitch && a?.peg === b?.peg)

function workStretch<R extends LoomRow>(
  before: LoomState,
  row: R,
  habits: Habits,
  old: RowRun<R>,
  { first, last }: SiteRange,
): RowRun<R> | null {
  if (last < first) return { ...old, row, before }
  const { heading } = old
  const rightToLeft = runsRightToLeft(habits.direction, heading)
  const sites = row.sites.slice(first, last + 1)
  const atEdge = first === 0 || last === row.sites.length - 1
  const were = old.row.sites.slice(first, last + 1 + old.row.sites.length - row.sites.length)
  // A float at the start or end of a row reaches into the next one.
  if (atEdge && [...sites, ...were].some(({ stitch }) => stitch.passes)) return null
  if (heading === 'back') sites.reverse()
  const low = (row.sites[first] as Site).peg
  const high = endOf(row.sites[last] as Site)
  // The pegs beside them are as they were after the row, and none of these stitches touches them.
  const loom = new Loom({ ...before, stacks: old.after.stacks }, habits.knit)
  for (let peg = low; peg <= high; peg++) loom.stacks[peg] = before.stacks[peg] ?? emptyStack
  loom.heading = heading
  for (const site of sites) workStitch(loom, site, rightToLeft, habits.crossing)
  const { stacks } = loom

  const beforeIt = (peg: number) => (heading === 'forward' ? peg < low : peg > high)
  const afterIt = (peg: number) => (heading === 'forward' ? peg > high : peg < low)
  const faults = [
    ...old.faults.filter(({ peg }) => beforeIt(peg)),
    ...loom.faults,
    ...old.faults.filter(({ peg }) => afterIt(peg)),
  ]
  return { ...old, row, before, after: { ...old.after, stacks }, faults }
}
