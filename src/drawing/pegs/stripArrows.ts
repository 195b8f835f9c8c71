import type { Moment } from '../../loom/walk'
import type { Point } from '../path'
import type { Item } from '../scene'
import { curvedArrow, overArrow } from './arrows'
import { levels, post } from './band'
import type { StripGeometry } from './stripGeometry'
import type { HeldNeedle } from './stripNeedle'
import { toolSide } from './stripTool'

/** The arrow that says what moves. */
export function moveArrow(
  moment: Moment,
  geometry: StripGeometry,
  held: HeldNeedle,
  before?: Moment,
): readonly Item[] {
  const { move, heading, stacks, gap } = moment
  const { x, xOfGap, heads, rim, unit, leftward } = geometry
  if (!move) return []
  const size = 0.3 * unit
  const side = toolSide(moment, geometry)
  /** Where work comes from: +1 right, -1 left. */
  const comes = leftward === (heading === 'forward') ? 1 : -1
  const spot = (peg: number): number | undefined => x(peg)
  const u = (at: number, dx: number, dy: number): Point => [at + dx * unit, rim + dy * unit]
  const top = -(post.high + post.headHigh)
  const levelOn = (peg: number): number =>
    levels(stacks[peg]?.map(({ kind }) => kind) ?? []).at(-1) ?? -0.4

  /** The lower loops go up and over the head, and down inside. */
  const liftedOver = (peg: number): readonly Item[] => {
    const at = spot(peg)
    if (at === undefined) return []
    const y = levelOn(peg)
    return curvedArrow(
      [
        u(at, side * 0.42, y - 0.28),
        u(at, side * 0.6, y - 0.8),
        u(at, side * 0.5, top - 0.72),
        u(at, -side * 0.08, top - 0.1),
      ],
      size,
    )
  }
  /** Down or up through the loop, to fetch the new one. */
  const through = (peg: number, down: boolean): readonly Item[] => {
    const at = spot(peg)
    if (at === undefined) return []
    const y = levelOn(peg)
    const [from, to] = down ? [y - 0.95, y - 0.16] : [y + 0.12, y - 0.8]
    const between = (share: number): Point => u(at, 0, from + (to - from) * share)
    return curvedArrow([between(0), between(0.3), between(0.6), between(1)], size)
  }

  switch (move.do) {
    case 'work':
      if (move.how === 'purl' || move.how === 'twisted purl') return through(move.peg, true)
      if (move.how === 'true') return through(move.peg, false)
      return liftedOver(move.peg)
    case 'lift':
      return liftedOver(move.peg)
    case 'move':
    case 'draw': {
      const [from, to] = [spot(move.from), spot(move.to)]
      if (from === undefined && to === undefined) return []
      const away = Math.sign(move.to - move.from) * (leftward ? -1 : 1)
      const a = from ?? (to ?? 0) - away * unit
      const b = to ?? (from ?? 0) + away * unit
      if (move.do === 'move' && move.under) {
        const level =
          rim + (levels(stacks[move.to]?.map(({ kind }) => kind) ?? [])[0] ?? -0.3) * unit
        const tip: Point = [b - away * 0.3 * unit, level]
        return curvedArrow(
          [
            [a, heads - 0.12 * unit],
            [a - away * 0.05 * unit, heads - 0.7 * unit],
            [b - away * 0.62 * unit, heads - 0.5 * unit],
            tip,
          ],
          size,
        )
      }
      return overArrow([a, heads - 0.12 * unit], [b, heads - 0.1 * unit], 0.55 * unit, size)
    }
    case 'take': {
      const at = spot(move.peg)
      const loops = held.loops.at(-1)
      if (at === undefined || !loops) return []
      const y = geometry.needle[loops.side]
      // Beside the yarn, when that leads from the needle too.
      const tip = loops.x - Math.sign((xOfGap(gap) ?? at) - loops.x) * 0.24 * unit
      return loops.side === 'inside'
        ? curvedArrow(
            [
              [at, heads - 0.1 * unit],
              [at, heads - 0.4 * unit],
              [tip, y + 0.85 * unit],
              [tip, y + 0.6 * unit],
            ],
            size,
          )
        : curvedArrow(
            [
              u(at, 0.4, -0.9),
              u(at, 0.4, -0.3),
              [loops.x + 0.3 * unit, y - 0.9 * unit],
              [loops.x, y - 0.25 * unit],
            ],
            size,
          )
    }
    case 'put': {
      const at = spot(move.peg)
      if (at === undefined) return []
      const side0 = before?.needle[0]?.side ?? 'inside'
      return side0 === 'inside'
        ? curvedArrow(
            [
              [at, heads - 0.95 * unit],
              [at, heads - 0.7 * unit],
              [at, heads - 0.5 * unit],
              [at, heads - 0.08 * unit],
            ],
            size,
          )
        : curvedArrow(
            [u(at, 0.45, 0.5), u(at, 0.45, 0), u(at, 0.5, -0.6), u(at, 0.24, levelOn(move.peg))],
            size,
          )
    }
    case 'bar':
    case 'base': {
      const at = spot(move.peg)
      if (at === undefined) return []
      return curvedArrow(
        [
          u(at, -side * 0.42, 0.0),
          u(at, -side * 0.5, -0.6),
          u(at, -side * 0.5, top - 0.7),
          u(at, 0, top - 0.08),
        ],
        size,
      )
    }
    case 'let go':
    case 'drop': {
      const at = spot(move.peg)
      if (at === undefined) return []
      return curvedArrow(
        [u(at, 0, top - 0.12), u(at, 0, top - 0.4), u(at, 0, top - 0.5), u(at, 0, top - 0.85)],
        size,
      )
    }
    case 'lay':
    case 'cast on': {
      const at = spot(move.peg)
      if (at === undefined) return []
      const y = levelOn(move.peg) - 0.46
      const as = move.do === 'lay' ? move.as : null
      if (as === 'wrap')
        return curvedArrow(
          [
            u(at, comes * 0.5, y - 0.2),
            u(at, -comes * 0.95, y - 0.24),
            u(at, -comes * 0.95, y + 0.3),
            u(at, comes * 0.5, y + 0.16),
          ],
          size,
        )
      const on = as === 'German turn' ? -comes : comes
      return curvedArrow(
        [
          u(at, on * 0.46, y),
          u(at, on * 0.2, y + 0.14),
          u(at, -on * 0.1, y + 0.14),
          u(at, -on * 0.46, y),
        ],
        size,
      )
    }
    case 'turn': {
      const at = xOfGap(gap)
      if (at === null) return []
      // The heading is the new one already: the arrow comes the old way and goes back.
      return curvedArrow(
        [
          u(at, comes * -0.5, top - 0.2),
          u(at, comes * 0.9, top - 0.2),
          u(at, comes * 0.9, top - 0.7),
          u(at, comes * -0.6, top - 0.7),
        ],
        size,
      )
    }
    case 'pass':
    case 'carry': {
      const [from, to] = [before ? xOfGap(before.gap) : null, xOfGap(gap)]
      if (from === null || to === null || from === to) return []
      const y = heads - 0.3 * unit
      return curvedArrow(
        [
          [from, y],
          [from + (to - from) * 0.3, y],
          [from + (to - from) * 0.6, y],
          [to, y],
        ],
        size,
      )
    }
  }
}
