import type { Moment } from '../../../loom/walk'
import type { LoomSetup } from '../../../pattern/pattern'
import { short, mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { Pen, post } from '../band'
import type { StripGeometry } from './geometry'
import type { HeldNeedle } from './needle'
import { yarnBall } from '../yarnBall'
import { yarnPath, type Catch } from '../yarnPath'

export interface DrawnYarn {
  readonly behind: readonly Item[]
  readonly before: readonly Item[]
  /** Where it hangs, mm; null when that gap is not shown. */
  readonly x: number | null
}

const wide = 0.1

export interface YarnOptions {
  readonly geometry: StripGeometry
  readonly loom: LoomSetup
  readonly held: HeldNeedle
  /** Levels of the strands on a peg, in units; bottom first. */
  readonly heights: (peg: number) => readonly number[]
  /** How many loops its way is drawn through. */
  readonly most: number
  /** The level of the strand that the yarn runs through now, where it is not the top one. */
  readonly through: { readonly peg: number; readonly y: number } | null
}

/** The yarn: its way over the last moves, and from the last loop to the ball. */
export function yarnOnStrip(moments: readonly Moment[], options: YarnOptions): DrawnYarn {
  const { geometry, loom } = options
  const now = moments.at(-1)
  const gap = gapShown(now?.gap ?? 0, now, geometry, loom)
  const path = yarnPath(moments, options.most)
  const { unit } = geometry
  const travels = now?.move?.do === 'pass' || now?.move?.do === 'carry'
  const pen = new Pen(unit, 'loop', false)
  const latest = travels ? new Pen(unit, 'tone-1', true) : pen
  const behind: Item[] = []
  const before: Item[] = []
  path.forEach((tie, index) => {
    const next = path[index + 1]
    const start = placeOf(tie, now, options)
    if (!start) return
    if (next) {
      const end = placeOf(next, now, options)
      if (!end || start.onNeedle || end.onNeedle) return
      // A laid strand comes out of its neighbours by itself.
      const isNear = Math.abs(start.x - end.x) < 1.5 * unit
      if (isNear && (start.leads || end.laid)) return
      const front = tie.passes.filter(({ side }) => side === 'outside')
      behind.push(...pen.strand(joint(start, { ...end, y: end.comes }, unit), wide))
      for (const { peg } of front)
        before.push(...beforeLegs(geometry.x(peg), geometry.rim + inFront * unit, unit, pen))
    } else if (gap !== null) {
      const from = runToGap(start, gap, tie, geometry, latest, behind, before)
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

/**
 * The peg whose strand the working yarn comes out of, and the sides on which that strand is not
 * joined to the neighbour: where the yarn leaves, and where it comes from farther off. +1 right.
 */
export function yarnLeaves(
  moments: readonly Moment[],
  geometry: StripGeometry,
  loom: LoomSetup,
): { readonly peg: number; readonly sides: readonly (1 | -1)[] } | null {
  const now = moments.at(-1)
  const [from, last] = yarnPath(moments, 2).slice(-2) as [Catch?, Catch?]
  const tie = last ?? from
  const gap = gapShown(now?.gap ?? 0, now, geometry, loom)
  if (!tie || tie.peg === null || gap === null) return null
  const at = geometry.x(tie.peg)
  if (at === undefined) return null
  const leaves = gap > at ? 1 : -1
  const isFar = last !== undefined && (from?.passes.length ?? 0) > 0
  return { peg: tie.peg, sides: isFar ? [1, -1] : [leaves] }
}

interface YarnPoint {
  readonly x: number
  readonly y: number
  readonly onNeedle: boolean
  /** From the middle of the peg to where the strand can be left, mm. */
  readonly half: number
  /** A laid strand leads to both neighbours by itself, a turn's strand to the one it goes on to. */
  readonly laid: boolean
  readonly leads: boolean
  /** Where the yarn comes to it, mm: to the loop under a turn's strand. */
  readonly comes: number
}

/** Half a peg with its band, and with a wrap round it, in units. */
const bandHalf = 0.24
const wrapHalf = 0.33

function placeOf(
  { peg, onNeedle, low }: Catch,
  now: Moment | undefined,
  { geometry, held, heights, through }: YarnOptions,
): YarnPoint | null {
  const { unit, rim, x } = geometry
  if (onNeedle) {
    const last = held.loops.filter(({ look }) => look !== 'gone').at(-1)
    if (!last) return null
    const y = geometry.needle[last.side] + 0.5 * unit
    return { x: last.x, y, onNeedle, half: 0, laid: false, leads: false, comes: y }
  }
  if (peg === null) return null
  const at = x(peg)
  if (at === undefined) return null
  const stack = now?.stacks[peg] ?? []
  const levels = heights(peg)
  const index = low ? 0 : levels.length - 1
  const kind = through?.peg === peg ? undefined : stack[index]?.kind
  const y = through?.peg === peg ? through.y : (levels[index] ?? -0.3)
  const laid = kind === 'yarn over' || kind === 'tuck'
  const isTurn = kind === 'German turn'
  const below = isTurn ? (levels[index - 1] ?? y) : y
  return {
    x: at,
    // A turn's strand is left where it lies high.
    y: rim + (isTurn ? y - 0.06 : y) * unit,
    onNeedle,
    half: (kind === 'wrap' ? wrapHalf : bandHalf) * unit,
    laid,
    leads: laid || isTurn,
    comes: rim + below * unit,
  }
}

/** From a loop to the next one. */
function joint(start: YarnPoint, end: YarnPoint, unit: number): string {
  const way = Math.sign(end.x - start.x) || 1
  const from: Point = [start.x + way * start.half, start.y]
  const to: Point = [end.x - way * end.half, end.y]
  const low = 0.12 * unit
  return mm`M${from}C${from[0] + way * 0.25 * unit} ${from[1] + low} ${to[0] - way * 0.25 * unit} ${to[1] + low} ${to[0]} ${to[1]}`
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
function runToGap(
  start: YarnPoint,
  to: number,
  tie: Catch,
  { unit, rim, x }: StripGeometry,
  pen: Pen,
  behind: Item[],
  before: Item[],
): Point {
  const way = Math.sign(to - start.x) || 1
  if (start.onNeedle) {
    const arrive: Point = [to, rim - 1.2 * unit]
    behind.push(
      ...pen.strand(
        mm`M${start.x} ${start.y}C${start.x} ${start.y + 0.5 * unit} ${to} ${arrive[1] - 0.5 * unit} ${to} ${arrive[1]}`,
        wide,
      ),
    )
    return arrive
  }
  const from: Point = [start.x + way * start.half, start.y]
  if (Math.abs(to - start.x) < 0.75 * unit) return from
  const front = tie.passes.filter(({ side }) => side === 'outside')
  const y = front.length > 0 ? rim + inFront * unit : start.y + 0.04 * unit
  const arrive: Point = [to - way * 0.12 * unit, y]
  const low = front.length > 0 ? short(y) : short(y + 0.1 * unit)
  const d = mm`M${from}C${from[0] + way * 0.3 * unit} ${low} ${arrive[0] - way * 0.3 * unit} ${low} ${arrive[0]} ${y}`
  behind.push(...pen.strand(d, wide))
  for (const { peg } of front) before.push(...beforeLegs(x(peg), y, unit, pen))
  return arrive
}

/** How high above the rim a strand lies that goes behind the peg but before the fabric, in units. */
const inFront = -0.13

/** Behind the peg but before the legs of its loop. */
const beforeLegs = (at: number | undefined, y: number, unit: number, pen: Pen): readonly Item[] =>
  at === undefined
    ? []
    : [-1, 1].flatMap((side) =>
        pen.strand(
          mm`M${at + side * 0.42 * unit} ${y}L${at + side * (post.half + 0.08) * unit} ${y}`,
          wide,
        ),
      )

/** Out through the gap, over the rim and down to the ball. */
function downTo([x, y]: Point, gap: number, { rim, rimHigh, unit, ball }: StripGeometry): string {
  const low = rim + rimHigh * 0.4
  return mm`M${x} ${y}C${x + (gap - x) * 0.7} ${y} ${gap} ${y + 0.1 * unit} ${gap} ${Math.max(y + 0.35 * unit, low - 0.6 * unit)}L${gap} ${ball - 0.3 * unit}`
}
