import type { Point } from '../../path'
import type { Item } from '../../scene'
import { overCurve, pointOn, straightCurve, type Curve } from '../arrows'
import { headItems, levels, post } from '../band'
import { exchanged, type Doing, type OneMove } from './doing'
import type { StripGeometry } from './geometry'
import type { HeldNeedle } from './needle'
import { toolSide } from './tool'

/** One arrow of a move. */
export interface MoveArrow {
  /** With the head at its end, unless it goes on behind a peg. */
  readonly curve: Curve
  /** The part behind a peg, drawn in dashes; where there is a head on it, it comes last. */
  readonly hidden?: { readonly curve: Curve; readonly comes: 'first' | 'last' }
  /** Where its number stands. */
  readonly number: Point
  /** A line that the arrow starts from: all that it takes along. */
  readonly from?: readonly Point[]
  /** What lies before its tip. */
  readonly cover?: readonly Item[]
}

export interface ArrowPlace {
  readonly geometry: StripGeometry
  readonly held: HeldNeedle
  /** The peg that is being worked, with the levels of its strands and the tip of the hook. */
  readonly doing: (Doing & { readonly heights: readonly number[] }) | null
}

const top = -(post.high + post.headHigh)

/**
 * The arrows of a move, in the order of what the hands do. `index`: which move of its figure it is,
 * of `count`.
 */
export function arrowsOf(
  step: OneMove,
  index: number,
  count: number,
  place: ArrowPlace,
): readonly MoveArrow[] {
  const { before, after } = step
  const { move, heading, stacks, gap } = after
  const { geometry, held, doing } = place
  const { x, xOfGap, heads, rim, unit, leftward } = geometry
  if (!move) return []
  const side = toolSide(after, geometry)
  /** Where work comes from: +1 right, -1 left. */
  const comes = leftward === (heading === 'forward') ? 1 : -1
  const u = (at: number, dx: number, dy: number): Point => [at + dx * unit, rim + dy * unit]
  const levelOn = (peg: number, place: 0 | -1 = -1): number =>
    levels(stacks[peg]?.map(({ kind }) => kind) ?? []).at(place) ?? -0.4
  const numbered = (curve: Curve, dx = 0, dy = -0.02, t = 0.5): MoveArrow => {
    const [px, py] = pointOn(curve, t)
    return { curve, number: [px + dx * unit, py + dy * unit] }
  }
  const atPeg = (peg: number, make: (at: number) => readonly MoveArrow[]): readonly MoveArrow[] => {
    const at = x(peg)
    return at === undefined ? [] : make(at)
  }

  switch (move.do) {
    case 'work':
    case 'lift':
      return atPeg(move.peg, (at) => {
        if (doing && !doing.goesOver)
          return [numbered(drawnThrough(doing, u, at, side), -side * 0.3)]
        const how = move.do === 'work' ? move.how : null
        if (!doing && (how === 'purl' || how === 'twisted purl' || how === 'true'))
          return [numbered(pushedThrough(levelOn(move.peg), how !== 'true', u, at))]
        return [liftedOver(doing, levelOn(move.peg), u, at, side, place)]
      })
    case 'move':
    case 'draw': {
      const [from, to] = [x(move.from), x(move.to)]
      if (from === undefined && to === undefined) return []
      const away = Math.sign(move.to - move.from) * (leftward ? -1 : 1)
      const a = from ?? (to ?? 0) - away * unit
      const b = to ?? (from ?? 0) + away * unit
      if (move.do === 'move' && move.under)
        return aroundTheNeedle(step, b, away, place, {
          curve: [
            [a, heads - 0.12 * unit],
            [a + away * 0.1 * unit, heads - 0.55 * unit],
            [b - away * 0.56 * unit, heads - 0.6 * unit],
            [b - away * 0.42 * unit, rim + (levelOn(move.to, 0) - 0.1) * unit],
          ],
          number: [a - away * 0.06 * unit, heads - 0.42 * unit],
        })
      if (move.do === 'draw')
        return [
          numbered([
            u(a, 0, levelOn(move.from) + 0.1),
            u(a, away * 0.1, top - 0.9),
            u(b, -away * 0.3, top - 0.8),
            u(b, 0, top - 0.08),
          ]),
        ]
      if (before.needle.some(({ side }) => side === 'inside'))
        return [pastWaiting(u, a, b, levelOn(move.to), count > 1 ? index / (count - 1) : 0.5)]
      const curve = overCurve([a, heads - 0.12 * unit], [b, heads - 0.1 * unit], 0.55 * unit)
      return [numbered(curve, 0, 0, 0.13)]
    }
    case 'take':
      return atPeg(move.peg, (at) => {
        const loops = held.loops[before.needle.length]
        if (!loops) return []
        const y = geometry.needle[loops.side]
        const tip = loops.x
        return [
          loops.side === 'inside'
            ? numbered(
                [
                  [at, heads - 0.1 * unit],
                  [at, heads - 0.4 * unit],
                  [tip, y + 1.0 * unit],
                  [tip, y + 0.6 * unit],
                ],
                0,
                0,
                0.3,
              )
            : numbered([
                u(at, 0.42, levelOn(move.peg)),
                u(at, 0.5, -0.2),
                [loops.x, y - 0.8 * unit],
                [loops.x, y - 0.28 * unit],
              ]),
        ]
      })
    case 'put':
      return atPeg(move.peg, (at) => {
        const loops = held.loops[index]
        if (!loops) return []
        const y = geometry.needle[loops.side]
        return [
          loops.side === 'inside'
            ? numbered(
                [
                  [loops.x, y + 0.56 * unit],
                  [loops.x, y + 0.9 * unit],
                  [at, heads - 0.6 * unit],
                  [at, heads - 0.08 * unit],
                ],
                0,
                0,
                0.36,
              )
            : numbered([
                [loops.x, y - 0.25 * unit],
                [loops.x, y - 0.8 * unit],
                u(at, 0.5, -0.4),
                u(at, 0.28, levelOn(move.peg)),
              ]),
        ]
      })
    case 'bar':
    case 'base':
      return atPeg(move.peg, (at) => [
        numbered([
          u(at, side * 0.46, -0.1),
          u(at, side * 0.66, -0.7),
          u(at, side * 0.5, top - 0.7),
          u(at, 0, top - 0.08),
        ]),
      ])
    case 'let go':
    case 'drop':
      return atPeg(move.peg, (at) => [
        numbered(straightCurve(u(at, 0, top - 0.12), u(at, 0, top - 0.85))),
      ])
    case 'lay':
    case 'cast on':
      return atPeg(move.peg, (at) => {
        const as = move.do === 'lay' ? move.as : null
        const y = levelOn(move.peg) - (as === 'German turn' ? 0.62 : 0.46)
        if (as === 'wrap') return wrapArrows(step, u, at, comes, y, place)
        const on = as === 'German turn' ? -comes : comes
        return [
          numbered([
            u(at, on * 0.46, y),
            u(at, on * 0.2, y + 0.14),
            u(at, -on * 0.1, y + 0.14),
            u(at, -on * 0.46, y),
          ]),
        ]
      })
    case 'turn': {
      const at = xOfGap(gap)
      if (at === null) return []
      // The heading is the new one already: the arrow comes the old way and goes back.
      return [
        numbered([
          u(at, comes * -0.5, top - 0.2),
          u(at, comes * 0.9, top - 0.2),
          u(at, comes * 0.9, top - 0.7),
          u(at, comes * -0.6, top - 0.7),
        ]),
      ]
    }
    case 'pass':
    case 'carry': {
      const [from, to] = [xOfGap(before.gap), xOfGap(gap)]
      if (from === null || to === null || from === to) return []
      const at = move.do === 'pass' ? x(move.peg) : undefined
      const way = Math.sign(to - from)
      if (at !== undefined && exchanged(step).length > 0) {
        const y = rim - 0.95 * unit
        return aroundTheNeedle(step, at, way, place, {
          curve: straightCurve([from, y], [at - way * post.half * unit, y]),
          hidden: {
            curve: straightCurve([at - way * post.half * unit, y], [to, y]),
            comes: 'last',
          },
          number: [from - way * 0.1 * unit, y],
        })
      }
      const y = heads - 0.3 * unit
      return [numbered(straightCurve([from, y], [to, y]))]
    }
  }
}

type Units = (at: number, dx: number, dy: number) => Point

/**
 * From the hook up and over the head of the peg, behind which its tip goes down. Of several strands
 * it starts from a line along them all.
 */
function liftedOver(
  doing: ArrowPlace['doing'],
  level: number,
  u: Units,
  at: number,
  side: number,
  { geometry: { rim, unit } }: ArrowPlace,
): MoveArrow {
  const lifted = doing?.heights.filter((_, index) => index !== doing.stays) ?? [level]
  const highest = lifted.at(-1) ?? level
  const many = lifted.length > 1
  const away = side * (many ? 0.46 : 0.36)
  const curve: Curve = [
    u(at, away, highest - (many ? 0.02 : 0.16)),
    u(at, side * 0.74, top + 0.1),
    u(at, -side * 0.02, top - 0.85),
    u(at, -side * 0.02, top + 0.12),
  ]
  return {
    curve,
    number: pointOn(curve, 0.4),
    ...(many
      ? {
          from: bracketAlong(
            lifted.map((y) => [away - side * 0.14, y - 0.02] as const),
            away,
            at,
            u,
          ),
        }
      : {}),
    cover: headItems([at, rim], unit, true),
  }
}

/** A line beside strands, with a short tooth into each of them. */
const bracketAlong = (
  strands: readonly Point[],
  away: number,
  at: number,
  u: Units,
): readonly Point[] => strands.flatMap(([dx, y]) => [u(at, away, y), u(at, dx, y), u(at, away, y)])

/**
 * Past loops that wait inside the loom: before the pegs, from one bare peg to another. `share`: 0
 * for the first of several, 1 for the last. Each goes at a height of its own, the later ones higher: where two
 * cross, the later one comes down through the earlier, away from the places where they begin.
 */
function pastWaiting(u: Units, from: number, to: number, level: number, share: number): MoveArrow {
  const way = Math.sign(to - from)
  const [start, lane, corner] = [-0.62, -post.high + 0.14 + (1 - share) * 0.46, 0.1]
  // Where one loop leaves a peg that the next comes to, the two stand side by side.
  const [leaves, comes] = [way * 0.25, -way * 0.12]
  const turn = u(to, comes - way * 1.6 * corner, lane)
  return {
    from: [
      u(from, leaves, start),
      u(from, leaves, lane + corner),
      u(from, leaves + way * corner, lane),
      turn,
    ],
    curve: [turn, u(to, comes, lane), u(to, comes, lane + 0.21), u(to, comes, level - 0.14)],
    number: u(from, leaves, start - 0.1),
  }
}

/** The new loop comes through the old ones, the way that the hook came from. */
function drawnThrough(
  { heights, stays, hook }: Doing & { readonly heights: readonly number[] },
  u: Units,
  at: number,
  side: number,
): Curve {
  const old = heights.filter((_, index) => index !== stays)
  const [lowest = -0.35, highest = lowest] = [old[0], old.at(-1)]
  const dx = -side * 0.42
  return hook === 'down'
    ? straightCurve(u(at, dx, lowest + 0.26), u(at, dx, highest - 0.5))
    : straightCurve(u(at, dx, highest - 0.4), u(at, dx, lowest + 0.28))
}

/** Where the loop is drawn as it is afterwards: down or up through it, to fetch the new one. */
const pushedThrough = (y: number, down: boolean, u: Units, at: number): Curve =>
  down
    ? straightCurve(u(at, 0, y - 0.95), u(at, 0, y - 0.16))
    : straightCurve(u(at, 0, y + 0.12), u(at, 0, y - 0.8))

/** Behind the peg first, then across its front and back. */
function wrapArrows(
  step: OneMove,
  u: Units,
  at: number,
  comes: number,
  y: number,
  place: ArrowPlace,
): readonly MoveArrow[] {
  const rear: Curve = [
    u(at, comes * 0.48, y - 0.16),
    u(at, comes * 0.2, y - 0.26),
    u(at, -comes * 0.2, y - 0.26),
    u(at, -comes * 0.4, y - 0.14),
  ]
  const front: Curve = [
    u(at, -comes * 0.4, y - 0.14),
    u(at, -comes * 0.66, y + 0.02),
    u(at, -comes * 0.3, y + 0.2),
    u(at, comes * 0.5, y + 0.12),
  ]
  return aroundTheNeedle(step, at, -comes, place, {
    curve: front,
    hidden: { curve: rear, comes: 'first' },
    number: u(at, -comes * 0.62, y - 0.02),
  })
}

/** Loops go to the needle, then the move is made, then they come back. `away`: to the free side. */
function aroundTheNeedle(
  step: OneMove,
  at: number,
  away: number,
  { geometry: { heads, unit, needle }, held }: ArrowPlace,
  arrow: MoveArrow,
): readonly MoveArrow[] {
  const [loops] = held.loops
  if (exchanged(step).length === 0 || loops?.look !== 'gone') return [arrow]
  const low = heads - 0.08 * unit
  const high = needle[loops.side] + 0.5 * unit
  const [out, back] = [at + away * 0.3 * unit, at - away * 0.02 * unit]
  const [outAt, backAt] = [loops.x + away * 0.2 * unit, loops.x - away * 0.16 * unit]
  const middle = (low + high) / 2
  return [
    { curve: straightCurve([out, low], [outAt, high]), number: [out + away * 0.26 * unit, middle] },
    arrow,
    {
      curve: straightCurve([backAt, high], [back, low]),
      number: [back - away * 0.37 * unit, middle - 0.05 * unit],
    },
  ]
}
