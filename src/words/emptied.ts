import type { Heading } from '../loom/direction'
import { pegsOf, supply } from '../loom/gather'
import { memo } from '../pattern/memo'
import type { PatternRow } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import type { Stitch } from '../stitches/stitch'

/** A stitch that leaves fewer loops than it takes, so that pegs are emptied. */
export const emptiesPegs = ({ takes, makes }: Stitch): boolean => takes > makes

/**
 * What becomes of the pegs that a stitch takes its loops from, in working order. One is its own; the
 * others get a stitch of the chart (a yarn over, a no stitch), or are filled with loops that follow
 * or that were before. `open`: not known here.
 */
export type PegFate = 'own' | 'filled from after' | 'filled from before' | 'open' | Stitch
export type Fates = readonly PegFate[]

/** A stitch that stands in no row, or in one that does not come out. */
export function unknownFates({ takes, shows }: Stitch): Fates {
  const own = shows === 'middle' ? takes >> 1 : 0
  return Array.from({ length: takes }, (_, index) => (index === own ? 'own' : 'open'))
}

const none: ReadonlyMap<Stitch, readonly Fates[]> = new Map()

/** What becomes of the pegs of each stitch of a row that empties some, each way once. */
export const fatesIn = memo((run: PatternRun): ReadonlyMap<Stitch, readonly Fates[]> =>
  run.row.sites.some(({ stitch }) => emptiesPegs(stitch)) ? findFates(run) : none,
)

function findFates({ row, before, heading, miscount }: PatternRun) {
  const found = new Map<Stitch, Fates[]>()
  const { sources } = supply(before, row, heading)
  const sites = heading === 'forward' ? row.sites : row.sites.toReversed()
  const at = sitesByPeg(row)
  const isAfter = (a: number, b: number): boolean => (heading === 'forward' ? a > b : a < b)
  /** Where the loops come from that are put on an emptied peg. */
  const filled = (peg: number, from: number | undefined): PegFate =>
    from !== undefined && isAfter(peg, from) ? 'filled from before' : 'filled from after'

  sites.forEach((site, index) => {
    const { stitch } = site
    if (!emptiesPegs(stitch)) return
    const taken = sources[index] ?? []
    const own = pegsOf(site, heading)[0] ?? site.peg
    // Where loops have drifted, none of those taken stands on the stitch's own peg.
    const first = taken.includes(own) ? own : taken[0]
    const fates = miscount
      ? unknownFates(stitch)
      : taken.map((peg): PegFate => {
          if (peg === first) return 'own'
          const place = at.get(peg)
          const there = place === undefined ? undefined : row.sites[place]?.stitch
          if (there?.takes === 0) return there
          return filled(peg, sources[indexOf(place, row, heading)]?.[0])
        })
    found.set(stitch, joinFates(found.get(stitch) ?? [], [fates]))
  })
  return found
}

/** The place in working order of a place in peg order. */
const indexOf = (place: number | undefined, row: PatternRow, heading: Heading): number =>
  place === undefined ? -1 : heading === 'forward' ? place : row.sites.length - 1 - place

function sitesByPeg({ sites }: PatternRow): ReadonlyMap<number, number> {
  const at = new Map<number, number>()
  sites.forEach(({ peg, stitch }, index) => {
    for (let offset = 0; offset < stitch.width; offset++) at.set(peg + offset, index)
  })
  return at
}

/** The ways of both lists, each once. */
export function joinFates(list: readonly Fates[], more: readonly Fates[]): Fates[] {
  const all = [...list]
  for (const fates of more) if (!all.some((one) => isSame(one, fates))) all.push(fates)
  return all
}

const isSame = (a: Fates, b: Fates): boolean =>
  a.length === b.length && a.every((fate, index) => fate === b[index])
