import type { Moment } from '../../loom/walk'
import { moveTo, short, type Point } from '../path'
import type { Item } from '../scene'
import { actingIn } from './acting'
import { levels } from './band'
import type { StripGeometry } from './stripGeometry'

/** The tool comes up through the gap that work has left, its hook at the loops of the acting peg. */
export function toolAtStrip(moment: Moment, geometry: StripGeometry): readonly Item[] {
  const { x, rim, unit, ball } = geometry
  const { peg, tool } = actingIn(moment.move)
  if (!tool || peg === null) return []
  const at = x(peg)
  if (at === undefined) return []
  const kinds = moment.stacks[peg]?.map(({ kind }) => kind) ?? []
  const high = kinds.length > 0 ? (levels(kinds).at(-1) ?? -0.4) : -0.9
  const side = toolSide(moment, geometry)
  const tip: Point = [at + side * 0.22 * unit, rim + (high + 0.02) * unit]
  return toolItems(tip, [at + side * 0.64 * unit, ball + 0.42 * unit], side, unit)
}

/**
 * On which side of the acting peg the tool comes up: where work comes from, unless the yarn hangs
 * there. +1 right, -1 left.
 */
export function toolSide({ move, heading, gap }: Moment, geometry: StripGeometry): 1 | -1 {
  const { x, xOfGap, unit, leftward } = geometry
  const side = leftward === (heading === 'forward') ? 1 : -1
  const { peg } = actingIn(move)
  const at = peg === null ? undefined : x(peg)
  const yarn = xOfGap(gap)
  if (at === undefined || yarn === null) return side
  return Math.abs(at + side * 0.5 * unit - yarn) < 0.3 * unit ? (-side as 1 | -1) : side
}

/** A hook with a thick handle. */
export function toolItems(tip: Point, end: Point, side: number, unit: number): readonly Item[] {
  const [dx, dy] = [end[0] - tip[0], end[1] - tip[1]]
  const along = (share: number): Point => [tip[0] + dx * share, tip[1] + dy * share]
  const neck = along(0.12)
  const grip = along(0.6)
  const d = `${moveTo([tip[0] - side * 0.02 * unit, tip[1] + 0.13 * unit])}C${short(tip[0] - side * 0.08 * unit)} ${short(tip[1] - 0.1 * unit)} ${short(tip[0] + side * 0.12 * unit)} ${short(tip[1] - 0.16 * unit)} ${short(neck[0] + side * 0.06 * unit)} ${short(neck[1])}L${short(grip[0])} ${short(grip[1])}`
  const handle = `${moveTo(grip)}L${short(end[0])} ${short(end[1])}`
  const line = (path: string, ink: Item['ink'], wide: number): Item => ({
    kind: 'path',
    d: path,
    ink,
    stroke: short(wide * unit),
    fill: false,
  })
  return [
    line(d, 'ground', 0.17),
    line(handle, 'ground', 0.34),
    line(d, 'tool', 0.09),
    line(handle, 'tool', 0.26),
  ]
}
