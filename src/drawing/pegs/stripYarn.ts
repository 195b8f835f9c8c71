import type { Moment } from '../../loom/walk'
import type { LoomSetup } from '../../pattern/pattern'
import { moveTo, short, type Point } from '../path'
import type { Item } from '../scene'
import { levels, Pen } from './band'
import type { StripGeometry } from './stripGeometry'
import type { HeldNeedle } from './stripNeedle'
import { yarnBall } from './yarnBall'
import { yarnPath, type Catch } from './yarnPath'

export interface DrawnYarn {
  readonly behind: readonly Item[]
  readonly before: readonly Item[]
  /** Where it hangs, mm; null when that gap is not shown. */
  readonly x: number | null
}

const wide = 0.1

/** The yarn: its way over the last moves, and from the last loop to the ball. */
export function yarnOnStrip(
  moments: readonly Moment[],
  geometry: StripGeometry,
  loom: LoomSetup,
  held: HeldNeedle,
): DrawnYarn {
  const now = moments.at(-1)
  const gap = gapShown(now?.gap ?? 0, now, geometry, loom)
  const path = yarnPath(moments)
  const { unit } = geometry
  const travels = now?.move?.do === 'pass' || now?.move?.do === 'carry'
  const pen = new Pen(unit, 'loop', false)
  const latest = travels ? new Pen(unit, 'tone-1', true) : pen
  const behind: Item[] = []
  const before: Item[] = []
  path.forEach((tie, index) => {
    const next = path[index + 1]
    const start = placeOf(tie, now, geometry, held)
    const end = next ? placeOf(next, now, geometry, held) : null
    if (!start || (next && !end)) return
    if (next && end) {
      if (start.onNeedle || end.onNeedle) return
      runAcross(start, end.x, tie, geometry, pen, behind, before, false)
    } else if (gap !== null) {
      const from = runAcross(start, gap, tie, geometry, latest, behind, before)
      before.push(...latest.strand(downTo(from, gap, geometry), wide))
    }
  })
  if (gap !== null) {
    if (path.length === 0) {
      const from: Point = [gap, geometry.rim - 0.3 * unit]
      before.push(...pen.strand(downTo(from, gap, geometry), wide))
    }
    before.push(...yarnBall([gap, geometry.ball], 0.33 * unit))
  }
  return { behind, before, x: gap }
}

interface Place {
  readonly x: number
  readonly y: number
  readonly onNeedle: boolean
}

/** Half a peg with its band. */
const bandHalf = 0.24

function placeOf(
  { peg, onNeedle }: Catch,
  now: Moment | undefined,
  geometry: StripGeometry,
  held: HeldNeedle,
): Place | null {
  const { unit, rim, x } = geometry
  if (onNeedle) {
    const last = held.loops.at(-1)
    return last ? { x: last.x, y: geometry.needle[last.side] + 0.5 * unit, onNeedle } : null
  }
  if (peg === null) return null
  const at = x(peg)
  if (at === undefined) return null
  const heights = levels(now?.stacks[peg]?.map(({ kind }) => kind) ?? [])
  return { x: at, y: rim + (heights.at(-1) ?? -0.3) * unit, onNeedle }
}

/** On a ring the gap after the last peg is the one before the first. */
function gapShown(
  gap: number,
  now: Moment | undefined,
  { xOfGap }: StripGeometry,
  { shape, pegs }: LoomSetup,
): number | null {
  if (shape === 'ring' && now) {
    const other = gap === pegs ? 0 : gap === 0 ? pegs : null
    return xOfGap(gap) ?? (other === null ? null : xOfGap(other))
  }
  return xOfGap(gap)
}

/** From a loop past the pegs in between, behind or before them; gives where it arrives. */
function runAcross(
  start: Place,
  to: number,
  tie: Catch,
  { unit, rim }: StripGeometry,
  pen: Pen,
  behind: Item[],
  before: Item[],
  endsAtGap = true,
): Point {
  const way = Math.sign(to - start.x) || 1
  if (start.onNeedle) {
    const arrive: Point = [to, rim - 1.2 * unit]
    behind.push(
      ...pen.strand(
        `${moveTo([start.x, start.y])}C${short(start.x)} ${short(start.y + 0.5 * unit)} ${short(to)} ${short(arrive[1] - 0.5 * unit)} ${short(to)} ${short(arrive[1])}`,
        wide,
      ),
    )
    return arrive
  }
  const from: Point = [start.x + way * bandHalf * unit, start.y]
  if (Math.abs(to - start.x) < 0.75 * unit) return from
  const outside = tie.passes.at(-1)?.side === 'outside'
  const y = start.y + (outside ? 0.14 : 0.04) * unit
  const arrive: Point = [to - way * (endsAtGap ? 0.12 : bandHalf) * unit, y]
  const low = short(y + 0.1 * unit)
  const d = `${moveTo(from)}C${short(from[0] + way * 0.3 * unit)} ${low} ${short(arrive[0] - way * 0.3 * unit)} ${low} ${short(arrive[0])} ${short(y)}`
  ;(outside ? before : behind).push(...pen.strand(d, wide))
  return arrive
}

/** Out through the gap, over the rim and down to the ball. */
function downTo([x, y]: Point, gap: number, { rim, rimHigh, unit, ball }: StripGeometry): string {
  const low = rim + rimHigh * 0.4
  return `${moveTo([x, y])}C${short(x + (gap - x) * 0.7)} ${short(y)} ${short(gap)} ${short(y + 0.1 * unit)} ${short(gap)} ${short(Math.max(y + 0.35 * unit, low - 0.6 * unit))}L${short(gap)} ${short(ball - 0.3 * unit)}`
}
