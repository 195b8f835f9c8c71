import { closed, type Point } from '../path'
import type { Item } from '../scene'
import { smallestReadable } from '../sizes'
import type { StripGeometry } from './stripGeometry'

/** The rim that the pegs stand on, torn off where the loom goes on, with the numbers of the pegs. */
export function rimItems(geometry: StripGeometry): readonly Item[] {
  const { left, width, rim, rimHigh, ends, unit, pegs, x } = geometry
  const right = width - left
  const tear = (at: number, side: number, up: boolean): Point[] => {
    const steps = [0, 0.25, 0.5, 0.75, 1].map((share, i): Point => [
      at + side * unit * (i % 2 === 0 ? 0.12 : 0.28),
      rim + rimHigh * share,
    ])
    return up ? steps.reverse() : steps
  }
  const straight = (at: number, up: boolean): Point[] =>
    up
      ? [
          [at, rim + rimHigh],
          [at, rim],
        ]
      : [
          [at, rim],
          [at, rim + rimHigh],
        ]
  const outline = closed([
    ...(ends.right ? straight(right, false) : tear(right, 1, false)),
    ...(ends.left ? straight(left, true) : tear(left, -1, true)),
  ])
  const size = Math.max(smallestReadable.text, unit * 0.32)
  return [
    { kind: 'path', d: outline, ink: 'unworked', stroke: 0, fill: true },
    { kind: 'path', d: outline, ink: 'frame', stroke: 0.04 * unit, fill: false },
    ...pegs.map((peg): Item => ({
      kind: 'text',
      x: x(peg) ?? 0,
      y: rim + rimHigh / 2 + size * 0.36,
      text: String(peg + 1),
      size,
      anchor: 'middle',
      ink: 'note',
      ...(peg === 0 ? { weight: 'bold' as const } : {}),
    })),
  ]
}
