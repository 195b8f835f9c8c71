import { runsRightToLeft, type Direction, type Heading } from './direction'
import {
  drifts,
  findMiscount,
  inOrder,
  loopsInRun,
  pegsOf,
  shiftLoops,
  standsReady,
  supply,
  type Miscount,
} from './gather'
import { Loom, type Fault } from './loom'
import type { Knit, Move } from './move'
import { workStitch } from './workStitch'
import type { Crossing, LoomRow, Site, Transfer } from './row'
import { afterRow, gapBefore, pegInLoom, turnPegOf } from './rowEnd'
import type { LoomState } from './state'
import { emptyStack, holdsTurn } from './strand'

/** How this loom is worked. */
export interface Habits {
  readonly shape: 'ring' | 'bar'
  readonly direction: Direction
  readonly knit: Knit
  readonly crossing: Crossing
  readonly transfer: Transfer
}

/** One row, worked: the loom before and after it, and what the hands noticed. */
export interface RowRun<R extends LoomRow = LoomRow> {
  readonly row: R
  readonly before: LoomState
  readonly after: LoomState
  readonly heading: Heading
  readonly rightToLeft: boolean
  /** Loops in the row's run before it. */
  readonly loops: number
  readonly miscount: Miscount | null
  readonly faults: readonly Fault[]
}

/** A move with the site it belongs to; null for the row's own start and end. */
export type Recorder = (move: Move, loom: Loom, site: Site | null) => void

/** Work one row on the loom, stitch by stitch and peg by peg. */
export function workRow<R extends LoomRow>(
  before: LoomState,
  row: R,
  habits: Habits,
  recorder?: Recorder,
): RowRun<R> {
  let current: Site | null = null
  const loom = new Loom(
    before,
    habits.knit,
    recorder && ((move, at) => recorder(move, at, current)),
  )
  const heading = row.heading ?? before.heading
  const rightToLeft = runsRightToLeft(habits.direction, heading)
  // A row that covers none of the pegs leaves the loom as it is.
  if (row.sites.length === 0)
    return {
      row,
      before,
      after: before,
      heading,
      rightToLeft,
      loops: 0,
      miscount: null,
      faults: [],
    }
  loom.heading = heading
  findYarn(loom, row, heading, habits)

  const loops = loopsInRun(before, row)
  const miscount = loops === row.takes ? null : findMiscount(before, row, heading)
  const workSite = (site: Site): void => {
    current = site
    workStitch(loom, site, rightToLeft, habits.crossing)
  }

  if (miscount) {
    for (const site of inOrder(row, heading)) workAsDrawn(loom, before, site, workSite)
  } else if (standsReady(before, row)) {
    for (const site of inOrder(row, heading)) workSite(site)
  } else {
    const given = supply(before, row, heading)
    const drift = drifts(before, row, heading)
    const ready = given.sites.map(
      (site, i) =>
        drift[i] === 0 &&
        (i === 0 || drift[i - 1] === 0) &&
        standsOn(site, given.sources[i] ?? [], heading),
    )
    for (let i = 0; i < given.sites.length; i++) {
      if (!ready[i]) {
        let last = i
        while (last + 1 < given.sites.length && !ready[last + 1]) last++
        current = given.sites[i] ?? null
        shiftLoops(loom, given, i, last, heading, rightToLeft, habits.transfer)
        ready.fill(true, i, last + 1)
      }
      workSite(given.sites[i] as Site)
    }
  }
  current = null
  endRow(loom, row, heading, habits)
  const after = loom.settle(before)
  return { row, before, after, heading, rightToLeft, loops, miscount, faults: loom.faults }
}

/** Where no loop has drifted, a stitch can be worked at once if its loops stand on its own pegs. */
const standsOn = (site: Site, sources: readonly number[], heading: Heading): boolean =>
  site.stitch.takes <= site.stitch.makes
    ? sources.every((peg, i) => peg === pegsOf(site, heading)[i])
    : sources.length === 1 && sources[0] === site.peg

/**
 * A row must start beside the yarn; on a ring the last gap is the first one again. The yarn may hang further
 * on, where the row has no stitches up to there.
 */
function findYarn(loom: Loom, row: LoomRow, heading: Heading, habits: Habits): void {
  const first = heading === 'forward' ? row.from : row.to
  const gap = gapBefore(row, heading)
  const same = (a: number, b: number): boolean =>
    a === b || (habits.shape === 'ring' && (a - b) % loom.pegs === 0)
  if (!same(loom.gap, gap) && !isPassedFree(loom.gap, row, heading))
    loom.faults.push({ kind: 'start', peg: first, yarnGap: loom.gap })
  loom.gap = gap
}

/** Has the row no stitch between its start and this gap? */
const isPassedFree = (gap: number, { from, to, sites }: LoomRow, heading: Heading): boolean =>
  gap >= from &&
  gap <= to + 1 &&
  sites.every(
    ({ peg, stitch }) =>
      stitch.takes + stitch.makes === 0 || (heading === 'forward' ? peg >= gap : peg < gap),
  )

/** In a row that miscounts, work each stitch on the loops of its own pegs, so errors stay put. */
function workAsDrawn(
  loom: Loom,
  before: LoomState,
  site: Site,
  workSite: (site: Site) => void,
): void {
  const { stitch, peg } = site
  if (stitch.takes < stitch.width) {
    const kept = stitch.takes > 0 ? 1 : 0
    for (let offset = kept; offset < stitch.width; offset++) loom.drop(peg + offset)
  } else if (stitch.takes === 0 && before.stacks[peg] !== emptyStack) loom.drop(peg)
  workSite(site)
}

function endRow(loom: Loom, row: LoomRow, heading: Heading, { shape }: Habits): void {
  const setting = { shape, pegs: loom.pegs }
  const after = afterRow(row, heading, setting, loom.gap)
  const last = heading === 'forward' ? row.to : row.from
  const turn = turnPegOf(row, heading)
  if (turn !== null && row.end !== 'on') {
    const peg = pegInLoom(turn, setting)
    if (row.end === 'German turn' && holdsTurn(loom.stack(peg)))
      loom.faults.push({ kind: 'turned twice', peg })
    if (peg < 0 || peg >= loom.pegs) loom.faults.push({ kind: 'no peg to wrap', peg: last })
    else loom.lay(peg, row.end)
  }
  loom.gap = after.gap
  if (after.heading !== heading) loom.turn()
}
