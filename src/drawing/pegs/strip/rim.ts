import { closed, polyline, mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { smallestReadable } from '../../sizes'
import type { StripGeometry } from './geometry'
import { filled, stroked, written } from '../../items'

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
  const size = numberSize(unit)
  return [
    filled(outline, 'unworked'),
    stroked(outline, 'frame', 0.04 * unit),
    ...pegs.map((peg): Item =>
      written(String(peg + 1), [x(peg) ?? 0, rim + rimHigh / 2 + size * 0.36], size, 'middle'),
    ),
    ...firstPegMark(geometry, size),
  ]
}

/** Easily read as long as three figures have room from peg to peg. */
const numberSize = (unit: number): number =>
  Math.max(smallestReadable.text, unit * 0.32, Math.min(2.5, unit * 0.4))

/**
 * A small mark beside the number of the first peg, as many looms have one there. It points nowhere,
 * and stands on the side of the second peg: the hook comes up on the other side, the yarn farther off.
 */
function firstPegMark({ x, rim, rimHigh, leftward }: StripGeometry, size: number): readonly Item[] {
  const at = x(0)
  if (at === undefined) return []
  const [middle, y] = [at + (leftward ? -1 : 1) * size * 0.72, rim + rimHigh / 2]
  const half = size * 0.24
  const d = mm`M${middle} ${y - half}L${middle + half} ${y}L${middle} ${y + half}L${middle - half} ${y}Z`
  return [filled(d, 'note')]
}

/** From the middle of a peg, in units: clear of yarn and hook. */
const tickAway = 0.34

/** A bracket below the pegs that are meant, open where they go on past what is shown. */
export function rangeMark(pegs: readonly number[], geometry: StripGeometry): readonly Item[] {
  const { x, rim, rimHigh, unit, left, width } = geometry
  const shown = pegs.flatMap((peg) => x(peg) ?? [])
  if (shown.length === 0) return []
  const y = rim + rimHigh + 0.18 * unit
  const tick = 0.12 * unit
  const [low, high] = [Math.min(...shown), Math.max(...shown)]
  const more = shown.length < pegs.length
  const edge = (at: number, side: 1 | -1, border: number): Point[] =>
    more && Math.abs(at - border) < unit
      ? [[border, y]]
      : [
          [at + side * tickAway * unit, y],
          [at + side * tickAway * unit, y - tick],
        ]
  const d = polyline([...edge(low, -1, left).reverse(), ...edge(high, 1, width - left)])
  return [stroked(d, 'note', 0.07 * unit)]
}
