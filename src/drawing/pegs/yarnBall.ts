import { circlePath, mm, type Point } from '../path'
import type { Item } from '../scene'
import { filled, stroked } from '../items'

/** The ball that the working yarn comes from. */
export function yarnBall([x, y]: Point, radius: number): readonly Item[] {
  const d = circlePath([x, y], radius)
  const p = (dx: number, dy: number): string => mm`${x + dx * radius} ${y + dy * radius}`
  const threads =
    `M${p(-0.93, -0.3)}C${p(-0.3, -0.75)} ${p(0.5, -0.3)} ${p(0.75, 0.62)}` +
    `M${p(-0.98, 0.15)}C${p(-0.4, -0.35)} ${p(0.25, 0.05)} ${p(0.4, 0.88)}` +
    `M${p(-0.8, 0.58)}C${p(-0.45, 0.1)} ${p(-0.1, 0.4)} ${p(-0.05, 0.97)}` +
    `M${p(0.1, -0.97)}C${p(0.4, -0.6)} ${p(0.75, -0.35)} ${p(0.95, 0.2)}`
  return [
    stroked(d, 'loop-edge', radius * 0.22),
    filled(d, 'loop'),
    stroked(threads, 'loop-edge', radius * 0.11),
  ]
}
