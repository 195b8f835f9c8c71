import { between, arrowHead, circlePath, polyline, short, mm, type Point } from '../path'
import type { Item } from '../scene'
import { smallestReadable } from '../sizes'
import { filled, stroked, written } from '../items'

export type Curve = readonly [from: Point, one: Point, two: Point, to: Point]

/** A curved arrow with its tip at the end of the curve; with a light rim, so that it stands out. */
export function curvedArrow(curve: Curve, size: number, dash?: string): readonly Item[] {
  const [from, one, two, tip] = curve
  // The shaft ends in the head along the curve itself, so that the two never make a kink.
  const near = pointOn(curve, 0.97)
  const straight = Math.hypot(tip[0] - two[0], tip[1] - two[1]) > size * 0.2 ? two : near
  const angle = Math.atan2(tip[0] - straight[0], -(tip[1] - straight[1]))
  const back = (point: Point): Point => [
    point[0] - Math.sin(angle) * size * 0.7,
    point[1] + Math.cos(angle) * size * 0.7,
  ]
  const d = `M${at(from)}C${at(one)} ${at(back(two))} ${at(back(tip))}`
  const head = arrowHead(tip, angle, size)
  return [
    filled(head, 'ground', short(size * 0.3)),
    ...withRim(d, size, dash),
    filled(head, 'note'),
  ]
}

/** The first part of an arrow, before it goes behind something. */
export const arrowShaft = (
  [from, one, two, to]: Curve,
  size: number,
  dash?: string,
): readonly Item[] => withRim(`M${at(from)}C${at(one)} ${at(two)} ${at(to)}`, size, dash)

/** A line that an arrow starts from. */
export const arrowStart = (points: readonly Point[], size: number): readonly Item[] =>
  withRim(polyline(points), size)

/** A line of an arrow; with a light rim, unless it is drawn in dashes. */
function withRim(d: string, size: number, dash?: string): readonly Item[] {
  const stroke = short(size * 0.24)
  return [
    ...(dash === undefined ? [stroked(d, 'ground', stroke + size * 0.3)] : []),
    stroked(d, 'note', stroke, dash),
  ]
}

const at = ([x, y]: Point): string => mm`${x} ${y}`

/** A point of the curve, `t` from 0 to 1. */
export function pointOn(curve: Curve, t: number): Point {
  const s = 1 - t
  const weights = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t] as const
  const sum = (axis: 0 | 1): number =>
    curve.reduce((total, point, index) => total + point[axis] * (weights[index] ?? 0), 0)
  return [sum(0), sum(1)]
}

/** A curve from one point up and over to another. `rise`: how far above the higher one, mm. */
export function overCurve(from: Point, to: Point, rise: number): Curve {
  const top = Math.min(from[1], to[1]) - rise * 1.33
  const lean = (to[0] - from[0]) * 0.12
  return [from, [from[0] + lean, top], [to[0] - lean, top], to]
}

export const straightCurve = (from: Point, to: Point): Curve => [
  from,
  between(from, to, 0.3),
  between(from, to, 0.6),
  to,
]

/** Which arrow comes first: its number in a disc. */
export function arrowNumber([x, y]: Point, number: number, unit: number): readonly Item[] {
  const size = Math.max(smallestReadable.text, 0.34 * unit)
  const d = circlePath([x, y], size * 0.62)
  return [
    filled(d, 'ground'),
    stroked(d, 'note', size * 0.09),
    written(String(number), [x, y + size * 0.36], size, 'middle', 'note', 'bold'),
  ]
}
