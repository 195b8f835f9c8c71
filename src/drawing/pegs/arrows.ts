import { arrowHead, short, type Point } from '../path'
import type { Item } from '../scene'

export type Curve = readonly [from: Point, one: Point, two: Point, to: Point]

/** A curved arrow with its tip at the end of the curve; with a light rim, so that it stands out. */
export function curvedArrow(curve: Curve, size: number, dash?: string): readonly Item[] {
  const [from, one, two, tip] = curve
  const angle = Math.atan2(tip[0] - two[0], -(tip[1] - two[1]))
  const neck: Point = [tip[0] - Math.sin(angle) * size * 0.7, tip[1] + Math.cos(angle) * size * 0.7]
  const d = `M${at(from)}C${at(one)} ${at(two)} ${at(neck)}`
  const head = arrowHead(tip, angle, size)
  const stroke = short(size * 0.24)
  return [
    { kind: 'path', d, ink: 'ground', stroke: short(stroke + size * 0.3), fill: false },
    { kind: 'path', d: head, ink: 'ground', stroke: short(size * 0.3), fill: true },
    { kind: 'path', d, ink: 'note', stroke, fill: false, ...(dash === undefined ? {} : { dash }) },
    { kind: 'path', d: head, ink: 'note', stroke: 0, fill: true },
  ]
}

const at = ([x, y]: Point): string => `${short(x)} ${short(y)}`

/** An arrow from one point up and over to another. `rise`: how far above the higher one, mm. */
export function overArrow(from: Point, to: Point, rise: number, size: number): readonly Item[] {
  const top = Math.min(from[1], to[1]) - rise * 1.33
  const lean = (to[0] - from[0]) * 0.12
  return curvedArrow([from, [from[0] + lean, top], [to[0] - lean, top], to], size)
}
