import type { Moment } from '../../../loom/walk'
import { between, mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { actingIn, toolStands } from '../acting'
import { levels, post } from '../band'
import type { Doing } from './doing'
import type { StripGeometry } from './geometry'
import { stroked } from '../../items'

/** The tool comes up through the gap that work has left, its hook at the loops of the acting peg. */
export function toolAtStrip(moment: Moment, geometry: StripGeometry): readonly Item[] {
  const { x, rim, unit } = geometry
  const { peg, tool } = actingIn(moment.move)
  if (!tool || peg === null) return []
  const at = x(peg)
  if (at === undefined) return []
  const kinds = moment.stacks[peg]?.map(({ kind }) => kind) ?? []
  const high = kinds.length > 0 ? (levels(kinds).at(-1) ?? -0.4) : -0.9
  const side = toolSide(moment, geometry)
  const tip: Point = [at + side * 0.22 * unit, rim + (high + 0.02) * unit]
  return toolItems(tip, handleEnd(at, side, geometry), side, unit)
}

/** The handle slants away from the number of the peg and from the bracket under it. */
const handleEnd = (at: number, side: 1 | -1, { width, unit, ball }: StripGeometry): Point => {
  const room = (side > 0 ? width - at : at) - 0.15 * unit
  return [at + side * Math.min(unit, room), ball + 0.3 * unit]
}

/** On which side of the acting peg the tool comes up: +1 right, -1 left. */
export const toolSide = (moment: Moment, { leftward }: StripGeometry): 1 | -1 =>
  leftward === toolStands(moment) < 0 ? 1 : -1

/** The tool whose hook holds the old loops: what lies under them, and what lies before all. */
export interface HoldingTool {
  /** Relative to the foot of the peg. */
  readonly under: readonly Item[]
  /** On the page. */
  readonly before: readonly Item[]
  /** The tip, in units from the foot of the peg. */
  readonly tip: Point
}

/** The hook under all old loops of a peg; it comes from below, or from above for a purl. */
export function holdingTool(
  doing: Doing,
  heights: readonly number[],
  foot: Point,
  side: 1 | -1,
  geometry: StripGeometry,
): HoldingTool {
  const { unit } = geometry
  const old = heights.filter((_, index) => index !== doing.stays)
  const [lowest = -0.35, highest = lowest] = [old[0], old.at(-1)]
  const down = doing.hook === 'down'
  const tip: Point = down ? [side * 0.02, lowest + 0.2] : [side * 0.06, highest - 0.12]
  const leaves: Point = down
    ? [side * 0.2, highest - 0.22]
    : [side * 0.2, Math.min(-0.04, lowest + 0.2)]
  const mm = ([dx, dy]: Point): Point => [dx * unit, dy * unit]
  const page = ([dx, dy]: Point): Point => [foot[0] + dx * unit, foot[1] + dy * unit]
  const end = down
    ? page([side * 0.86, -(post.high + post.headHigh) - 0.38])
    : handleEnd(foot[0], side, geometry)
  return {
    under: hookItems(mm(tip), mm(leaves), down ? -side : side, unit, down),
    before: shaftItems(page(leaves), end, unit),
    tip,
  }
}

const line = (path: string, ink: Item['ink'], wide: number): Item => stroked(path, ink, wide)

/** The bent tip, and the wire up to where it comes out. */
function hookItems(
  tip: Point,
  out: Point,
  side: number,
  unit: number,
  down: boolean,
): readonly Item[] {
  const way = down ? -1 : 1
  const p = (dx: number, dy: number): string =>
    mm`${tip[0] + side * dx * unit} ${tip[1] + way * dy * unit}`
  const d = mm`M${p(-0.15, 0.1)}C${p(-0.17, -0.1)} ${p(0.02, -0.12)} ${p(0.02, 0.06)}L${out[0]} ${out[1]}`
  return [line(d, 'ground', 0.17 * unit), line(d, 'tool', 0.09 * unit)]
}

function shaftItems(from: Point, end: Point, unit: number): readonly Item[] {
  const grip = between(from, end, 0.45)
  const wire = mm`M${from}L${grip[0]} ${grip[1]}`
  const handle = mm`M${grip}L${end[0]} ${end[1]}`
  return [
    line(wire, 'ground', 0.17 * unit),
    line(handle, 'ground', 0.34 * unit),
    line(wire, 'tool', 0.09 * unit),
    line(handle, 'tool', 0.26 * unit),
  ]
}

/** A hook with a thick handle. */
export function toolItems(tip: Point, end: Point, side: number, unit: number): readonly Item[] {
  const [neck, grip] = [between(tip, end, 0.12), between(tip, end, 0.6)]
  const d = mm`M${tip[0] - side * 0.02 * unit} ${tip[1] + 0.13 * unit}C${tip[0] - side * 0.08 * unit} ${tip[1] - 0.1 * unit} ${tip[0] + side * 0.12 * unit} ${tip[1] - 0.16 * unit} ${neck[0] + side * 0.06 * unit} ${neck[1]}L${grip[0]} ${grip[1]}`
  const handle = mm`M${grip}L${end[0]} ${end[1]}`
  return [
    line(d, 'ground', 0.17 * unit),
    line(handle, 'ground', 0.34 * unit),
    line(d, 'tool', 0.09 * unit),
    line(handle, 'tool', 0.26 * unit),
  ]
}
