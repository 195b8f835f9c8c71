import { line, stroke, type Command, type Mark, type Sign, type SignPoint } from '../stitches/sign'

/** What of a sign stands in the chart: columns `from`..`to` of its own, from its left edge. */
export interface SignPart {
  readonly from: number
  readonly to: number
  /** The edges at which it is torn; an edge that only the sheet ends at is not. */
  readonly torn: { readonly left: boolean; readonly right: boolean }
}

/** How far the teeth of a torn edge reach into the sign, in columns. */
const depth = 0.26
const teeth = 3
/** Pieces that a curve is followed by. */
const curvePieces = 8

/**
 * The part of a sign, in columns of its own, drawn in true size and torn where it is cut: so it is
 * never taken for a smaller stitch that is whole.
 */
export function cutSign(sign: Sign, { from, to, torn }: SignPart): Sign {
  const left = torn.left ? from + depth : from
  const right = torn.right ? to - depth : to
  const parts = sign
    .filter(({ ink }) => ink !== 'shade' && ink !== 'behind')
    .flatMap((mark) => clipped(mark, left, right, from))
  const edges: Mark[] = []
  if (torn.left) edges.push(tear(0, depth))
  if (torn.right) edges.push(tear(to - from, -depth))
  return [...parts, ...edges]
}

function tear(x: number, into: number): Mark {
  const points = Array.from({ length: 2 * teeth + 1 }, (_, i): SignPoint => [
    x + (i % 2 === 0 ? 0 : into),
    i / (2 * teeth),
  ])
  return stroke('front', ...points)
}

function clipped({ ink, path }: Mark, left: number, right: number, origin: number): Mark[] {
  const moved = ([x, y]: SignPoint): SignPoint => [x - origin, y]
  const marks: Mark[] = path.flatMap((command): Mark[] =>
    command[0] === 'O' && command[1] > left && command[1] < right
      ? [{ ink, path: [['O', command[1] - origin, command[2], command[3]]] }]
      : [],
  )
  for (const { points, closed } of outlines(path)) {
    if (ink === 'line' || ink === 'fine' || ink === 'front') {
      const whole = closed && points[0] ? [...points, points[0]] : points
      for (const run of runsWithin(whole, left, right)) marks.push(line(...run.map(moved)))
      continue
    }
    const kept = within(within(points, left, 1), right, -1)
    if (kept.length > 2)
      marks.push({ ink, path: [...line(...kept.map(moved)).path, ['Z']] as Command[] })
  }
  return marks
}

/** The lines and areas of a path as rows of points; circles are left out. */
function outlines(path: readonly Command[]): { points: SignPoint[]; closed: boolean }[] {
  const found: { points: SignPoint[]; closed: boolean }[] = []
  for (const command of path) {
    const open = found.at(-1)
    if (command[0] === 'M') found.push({ points: [[command[1], command[2]]], closed: false })
    else if (!open) continue
    else if (command[0] === 'L') open.points.push([command[1], command[2]])
    else if (command[0] === 'Z') open.closed = true
    else if (command[0] === 'C') open.points.push(...followed(open.points.at(-1), command))
  }
  return found
}

function followed(
  [x0, y0]: SignPoint = [0, 0],
  [, x1, y1, x2, y2, x3, y3]: Extract<Command, readonly ['C', ...number[]]>,
): SignPoint[] {
  return Array.from({ length: curvePieces }, (_, i): SignPoint => {
    const t = (i + 1) / curvePieces
    const u = 1 - t
    const at = (a: number, b: number, c: number, d: number) =>
      u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d
    return [at(x0, x1, x2, x3), at(y0, y1, y2, y3)]
  })
}

const meets = ([ax, ay]: SignPoint, [bx, by]: SignPoint, x: number): SignPoint => [
  x,
  ay + ((by - ay) * (x - ax)) / (bx - ax),
]

/** The parts of a line between two uprights. */
function runsWithin(points: readonly SignPoint[], left: number, right: number): SignPoint[][] {
  const runs: SignPoint[][] = []
  let open: SignPoint[] | null = null
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as SignPoint, points[i] as SignPoint]
    const inside = segmentWithin(a, b, left, right)
    if (!inside) {
      open = null
      continue
    }
    const [start, end] = inside
    if (!open || start !== a) runs.push((open = [start]))
    open.push(end)
    if (end !== b) open = null
  }
  return runs
}

function segmentWithin(
  a: SignPoint,
  b: SignPoint,
  left: number,
  right: number,
): [SignPoint, SignPoint] | null {
  if (Math.max(a[0], b[0]) < left || Math.min(a[0], b[0]) > right) return null
  const end = (point: SignPoint): SignPoint =>
    point[0] < left ? meets(a, b, left) : point[0] > right ? meets(a, b, right) : point
  return [end(a), end(b)]
}

/** The part of an area beside an upright: right of it (side 1) or left of it (side -1). */
function within(points: readonly SignPoint[], x: number, side: 1 | -1): SignPoint[] {
  const keeps = (point: SignPoint | undefined): boolean => !!point && side * (point[0] - x) >= 0
  return points.flatMap((point, i) => {
    const before = points.at(i - 1) as SignPoint
    const crossing = keeps(point) !== keeps(before) ? [meets(before, point, x)] : []
    return keeps(point) ? [...crossing, point] : crossing
  })
}
