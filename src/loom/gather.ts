import type { Heading } from './direction'
import type { Loom } from './loom'
import type { LoomRow, Site, Transfer, Worked } from './row'
import type { LoomState } from './state'
import { emptyStack } from './strand'

/** The loops a row takes, site by site in working order: `sources[i]` are the pegs they stand on. */
export interface Supply {
  readonly sites: readonly Site[]
  readonly sources: readonly (readonly number[])[]
}

/** A row that takes another number of loops than there are in its run. */
export interface Miscount {
  readonly takes: number
  readonly loops: number
  /** Last peg up to which, in working order, loops and stitches still agree; null: none. */
  readonly afterPeg: number | null
}

export const inOrder = (row: LoomRow, heading: Heading): readonly Site[] =>
  heading === 'forward' ? row.sites : row.sites.toReversed()

/** The pegs of a site in working order. */
export function pegsOf({ stitch, peg }: Site, heading: Heading): number[] {
  const pegs = Array.from({ length: stitch.width }, (_, offset) => peg + offset)
  return heading === 'forward' ? pegs : pegs.reverse()
}

export function loopsInRun({ stacks }: LoomState, { from, to }: LoomRow): number {
  let loops = 0
  for (let peg = from; peg <= to; peg++) if (stacks[peg] !== emptyStack) loops++
  return loops
}

/** Does every stitch find the loops it takes on its own pegs, so that none has to be moved? */
export function standsReady({ stacks }: LoomState, { sites }: LoomRow): boolean {
  for (const { stitch, peg } of sites) {
    if (stitch.takes === 1 && stitch.width === 1) {
      if (stacks[peg] === emptyStack) return false
    } else if (!siteReady(stacks, stitch, peg)) return false
  }
  return true
}

function siteReady(stacks: LoomState['stacks'], stitch: Worked, peg: number): boolean {
  let loops = 0
  for (let offset = 0; offset < stitch.width; offset++)
    if (stacks[peg + offset] !== emptyStack) loops++
  return loops === stitch.takes && (stitch.takes === 0 || stitch.takes === stitch.width)
}

/** Hand the loops of the run to its stitches, in working order. Needs loops = takes. */
export function supply(before: LoomState, row: LoomRow, heading: Heading): Supply {
  const sites = inOrder(row, heading)
  const step = heading === 'forward' ? 1 : -1
  let peg = heading === 'forward' ? row.from : row.to
  const sources = sites.map(({ stitch }) => {
    const found: number[] = []
    while (found.length < stitch.takes && peg >= row.from && peg <= row.to) {
      if (before.stacks[peg] !== emptyStack) found.push(peg)
      peg += step
    }
    return found
  })
  return { sites, sources }
}

/**
 * How far stitches and loops have drifted apart after each site, in working order: loops taken
 * so far less loops that stood on the pegs so far. Zero: every loop is worked at its own place.
 */
export function drifts(before: LoomState, row: LoomRow, heading: Heading): number[] {
  let drift = 0
  return inOrder(row, heading).map(({ stitch, peg }) => {
    drift += stitch.takes
    for (let offset = 0; offset < stitch.width; offset++)
      if (before.stacks[peg + offset] !== emptyStack) drift--
    return drift
  })
}

export function findMiscount(before: LoomState, row: LoomRow, heading: Heading): Miscount | null {
  const loops = loopsInRun(before, row)
  if (loops === row.takes) return null
  const sites = inOrder(row, heading)
  const last = drifts(before, row, heading).lastIndexOf(0)
  const site = sites[last]
  const afterPeg = site ? (pegsOf(site, heading).at(-1) ?? null) : null
  return { takes: row.takes, loops, afterPeg }
}

/** Where the loops of a site go: one on each of its pegs, or all on its first for a decrease. */
function targetsOf(site: Site, sources: readonly number[], heading: Heading): number[] {
  const pegs = pegsOf(site, heading)
  return sources.map(
    (_, i) => (site.stitch.takes > site.stitch.makes ? pegs[0] : pegs[i]) as number,
  )
}

/** Which source of a decrease must lie lowest: its index in working order, or -1 for no matter. */
function lowestOf(stitch: Worked, count: number, rightToLeft: boolean): number {
  if (!stitch.shows || count < 2) return -1
  if (stitch.shows === 'middle') return count >> 1
  return (stitch.shows === 'right') === rightToLeft ? 0 : count - 1
}

interface Shift {
  readonly from: number
  readonly to: number
  readonly lowest: boolean
}

/**
 * Move loops along the loom for the sites `first`..`last`, in an order that never crosses another
 * loop: those that go on from the last one back, those that go back from the first one on.
 */
export function shiftLoops(
  loom: Loom,
  { sites, sources }: Supply,
  first: number,
  last: number,
  heading: Heading,
  rightToLeft: boolean,
  transfer: Transfer,
): void {
  const onward: Shift[] = []
  const backward: Shift[] = []
  const step = heading === 'forward' ? 1 : -1
  for (let i = first; i <= last; i++) {
    const site = sites[i] as Site
    const taken = sources[i] as readonly number[]
    const targets = targetsOf(site, taken, heading)
    const lowest = transfer === 'plain' ? -1 : lowestOf(site.stitch, taken.length, rightToLeft)
    taken.forEach((from, n) => {
      const to = targets[n] as number
      if (from === to) return
      ;((to - from) * step > 0 ? onward : backward).push({ from, to, lowest: n === lowest })
    })
  }
  for (const { from, to, lowest } of [...onward.reverse(), ...backward]) {
    const pegs = Math.abs(to - from)
    if (pegs > 1) loom.faults.push({ kind: 'stretch', peg: from, to, pegs })
    loom.move(from, to, lowest)
  }
}
