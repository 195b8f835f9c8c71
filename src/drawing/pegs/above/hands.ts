import type { Moment } from '../../../loom/walk'
import { between, arrowHead, type Point } from '../../path'
import type { Item } from '../../scene'
import { actingIn, toolStands } from '../acting'
import { curvedArrow } from '../arrows'
import type { AboveGeometry } from './geometry'
import { toolItems } from '../strip/tool'
import { filled, stroked } from '../../items'

/** The tool, held from the outside. */
export function toolAbove(moment: Moment, geometry: AboveGeometry): readonly Item[] {
  const { peg, tool } = actingIn(moment.move)
  if (!tool || peg === null) return []
  const { at, unit, leftward } = geometry
  const back = toolStands(moment)
  const tip = at(peg + back * 0.08, 0.36)
  const end = at(peg + back * 0.75, 2.7)
  return toolItems(tip, end, leftward === back < 0 ? 1 : -1, unit * 0.85)
}

/** An arrow inside the loom, from the yarn the way that work goes now. */
export function headingArrow({ heading, gap }: Moment, geometry: AboveGeometry): readonly Item[] {
  const { kind, pegs, unit, radius, follow, at } = geometry
  const way = heading === 'forward' ? 1 : -1
  const small = kind === 'ring' && radius < 4 * unit
  const out = kind === 'ring' ? -Math.min(2.5, (radius / unit) * 0.5) : -2.1
  const length = kind === 'ring' ? Math.min(pegs / 5, 6) : Math.min(3, pegs / 3)
  // In a small ring the needle needs the room near the yarn.
  const from = gap - 0.5 + (small ? pegs / 2 - way * length * 0.5 : 0)
  const to = from + way * length
  const size = Math.max(1.6, 0.5 * unit)
  const tip = at(to, out)
  const neck = at(to - (way * size * 0.5) / unit, out)
  const angle = Math.atan2(tip[0] - neck[0], -(tip[1] - neck[1]))
  return [
    stroked(follow(from, to - (way * size * 0.4) / unit, out), 'note', size * 0.18),
    filled(arrowHead(tip, angle, size), 'note'),
  ]
}

/** From peg to peg, to the needle or back, or off. */
export function moveArrowAbove(
  { move, needle }: Moment,
  geometry: AboveGeometry,
  before?: Moment,
): readonly Item[] {
  const { at, unit } = geometry
  const size = Math.max(1.2, 0.32 * unit)
  const straight = (from: Point, to: Point): readonly Item[] =>
    curvedArrow([from, between(from, to, 0.3), between(from, to, 0.7), to], size)
  switch (move?.do) {
    case 'move':
    case 'draw': {
      const { from, to } = move
      const rise = -0.9
      return curvedArrow(
        [
          at(from, -0.25),
          at(from + (to - from) * 0.15, rise),
          at(to - (to - from) * 0.15, rise),
          at(to, -0.45),
        ],
        size,
      )
    }
    case 'take': {
      const out = needle.at(-1)?.side === 'outside' ? 1.55 : -0.85
      return straight(at(move.peg, out > 0 ? 0.3 : -0.1), at(move.peg, out))
    }
    case 'put': {
      const out = before?.needle[0]?.side === 'outside' ? 1.4 : -1.2
      return straight(at(move.peg, out), at(move.peg, out > 0 ? 0.5 : -0.5))
    }
    case 'let go':
    case 'drop':
      return straight(at(move.peg, 0), at(move.peg, -1.2))
    default:
      return []
  }
}
