import { stroke, type Mark, type SignPoint } from '../sign'
import { atBothEnds, inkOfFront, rightOf, strokes, type CrossCell } from './crossCell'

/**
 * A cross after JIS L 0201, from memory in all details: one line for each loop in front, heavy and never
 * broken, and a finer one for each loop that is knitted behind. Loops purled behind are short purl bars,
 * and a bar crosses each one that is purled in front.
 */
const heaviest = 0.127

export function strands(cell: CrossCell): Mark[] {
  const { front, back, ratio, side, frontTexture, backTexture } = cell
  const wanted = heaviest * side
  const top = Math.max(0.08 * ratio, wanted / 2)
  const bottom = ratio - top
  const height = bottom - top
  const weight = front > 1 ? Math.min(wanted, height / back / 2) : wanted
  const ink = inkOfFront(weight / side)
  const starts = Array.from({ length: front }, (_, loop) => loop + 0.5)
  const length = Math.hypot(back, height)
  const half = Math.min(0.2 * ratio, (0.42 * height) / back)
  const across: SignPoint = [(half * height) / length, (half * back) / length]
  const middle = ratio / 2
  const crossbar = (x: number): Mark =>
    stroke(ink, [x - across[0], middle - across[1]], [x + across[0], middle + across[1]])
  const way = { top, bottom, weight, ink }
  const behind = backTexture === 'purl' ? barsBehind(cell, way) : linesBehind(cell, way)
  return [
    ...starts.map((x) => stroke(ink, [x, bottom], [x + back, top])),
    ...(frontTexture === 'purl' ? starts.map((x) => crossbar(x + back / 2)) : []),
    ...atBothEnds(behind, cell),
  ]
}

interface Way {
  readonly top: number
  readonly bottom: number
  /** Of the strands in front. */
  readonly weight: number
  readonly ink: Mark['ink']
}

/** The last strand in front, beside which those behind end. */
const lastInFront = ({ front, back }: CrossCell, { top, bottom }: Way): [SignPoint, SignPoint] => [
  [front - 0.5, bottom],
  [front - 0.5 + back, top],
]

/** The lower ends of loops behind that can be seen, each up to the nearest line in front. */
function linesBehind(cell: CrossCell, way: Way): Mark[] {
  const { front, back, ratio, side } = cell
  const { top, bottom, weight } = way
  const fine = Math.min(0.077 * side, 0.72 * weight)
  const gap = Math.max(0.13 * side, 0.1 * ratio) + weight / 2 + fine / 2
  return Array.from({ length: back }, (_, loop) => loop).flatMap((loop) => {
    const start: SignPoint = [front + loop + 0.5, bottom]
    const away = rightOf(start, ...lastInFront(cell, way))
    const end: SignPoint = [start[0] - front, top]
    const seen = (away - gap) / (away - rightOf(end, ...lastInFront(cell, way)))
    if (seen * (bottom - top) < 0.1 * ratio) return []
    return [
      stroke('fine', start, [
        start[0] + (end[0] - start[0]) * seen,
        start[1] + (end[1] - start[1]) * seen,
      ]),
    ]
  })
}

/** A purl bar for each loop behind that is free, and for the outermost in any case. */
function barsBehind(cell: CrossCell, way: Way): Mark[] {
  const { front, back, ratio, side } = cell
  const half = Math.min(0.2, 0.3 * ratio)
  const y = way.bottom - 0.04 * ratio
  const isFree = (x: number) =>
    rightOf([x - half, y], ...lastInFront(cell, way)) >= way.weight + strokes.fine * side
  return Array.from({ length: back }, (_, loop) => front + loop + 0.5)
    .filter((x, loop) => loop === back - 1 || isFree(x))
    .map((x) => stroke(way.ink, [x - half, y], [x + half, y]))
}
