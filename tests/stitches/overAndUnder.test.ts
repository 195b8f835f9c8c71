import { expect, test } from 'vitest'
import { strokes } from '../../src/stitches/signs/crossCell'
import { signOf } from '../../src/stitches/signs/signOf'
import { traditions, type Mark, type Sign, type SignPoint } from '../../src/stitches/sign'
import type { Stitch } from '../../src/stitches/stitch'
import { standardVocabulary } from '../../src/stitches/vocabulary'

// Over and under are plain in small cells: drawn on squares of 12 to a cell's height and blurred as by an
// eye that does not look closely, a left cross and a right one have their ink in other places. Where both
// groups are as wide, the one is the other with front and back exchanged.

const high = 12
const ratio = 0.65
const across = high / ratio
const blur = 0.14 * high
/** Of paper that is wholly black. */
const greyOf = 0.21

function distance([x, y]: SignPoint, [x0, y0]: SignPoint, [x1, y1]: SignPoint): number {
  const [dx, dy] = [x1 - x0, y1 - y0]
  const share = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)))
  return Math.hypot(x - x0 - share * dx, y - y0 - share * dy)
}

const isInside = ([x, y]: SignPoint, points: readonly SignPoint[]): boolean =>
  points.filter(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length] as SignPoint
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)
  }).length %
    2 ===
  1

/** How dark a mark makes a point, 0 to 1, in squares of the drawing; null where it does not reach. */
function darkness({ ink, path }: Mark, at: SignPoint): number | null {
  const points = path.flatMap((command): SignPoint[] =>
    command[0] === 'M' || command[0] === 'L' ? [[command[1] * across, command[2] * high]] : [],
  )
  const [first] = path
  if (first?.[0] === 'O')
    return Math.hypot(at[0] - first[1] * across, at[1] - first[2] * high) < first[3] * high
      ? 1
      : null
  if (ink === 'ground' || ink === 'behind')
    return isInside(at, points) ? (ink === 'ground' ? 0 : greyOf) : null
  const half = (strokes[ink as keyof typeof strokes] * high) / 2
  const ends = path.at(-1)?.[0] === 'Z' ? [...points, points[0] as SignPoint] : points
  return ends.some((end, i) => i > 0 && distance(at, ends[i - 1] as SignPoint, end) < half)
    ? 1
    : null
}

const order = ['ground', 'behind', 'fine', 'line', 'front', 'solid']

function drawn(sign: Sign, width: number): number[][] {
  const marks = sign.toSorted((a, b) => order.indexOf(a.ink) - order.indexOf(b.ink))
  const columns = Math.round(width * across)
  return Array.from({ length: high }, (_, y) =>
    Array.from({ length: columns }, (_, x) =>
      marks.reduce((dark, mark) => darkness(mark, [x + 0.5, y + 0.5]) ?? dark, 0),
    ),
  )
}

function blurred(picture: readonly (readonly number[])[]): number[] {
  const reach = Math.ceil(2 * blur)
  const weight = (d: number) => Math.exp((-d * d) / (2 * blur * blur))
  return picture.flatMap((row, y) =>
    row.map((_, x) => {
      let sum = 0
      for (let dy = -reach; dy <= reach; dy++)
        for (let dx = -reach; dx <= reach; dx++)
          sum += (picture[y + dy]?.[x + dx] ?? 0) * weight(dy) * weight(dx)
      return sum
    }),
  )
}

/** 0: the same; 1: no ink of the one where the other has some. */
function difference(a: readonly number[], b: readonly number[]): number {
  const apart = a.reduce((sum, dark, i) => sum + Math.abs(dark - (b[i] ?? 0)), 0)
  return apart / [...a, ...b].reduce((sum, dark) => sum + dark, 0)
}

const crosses = standardVocabulary.stitches.filter(
  ({ cross }) => cross?.lean === 'right' && cross.front === cross.back,
)

test.each(traditions)(
  'after %s a left cross has its ink elsewhere than a right one',
  (tradition) => {
    const look = (stitch: Stitch) => blurred(drawn(signOf(stitch, tradition, ratio), stitch.width))
    expect(crosses).toHaveLength(12)
    for (const stitch of crosses) {
      const apart = difference(look(stitch), look(standardVocabulary.mirrorOf(stitch)))
      expect(apart, stitch.id).toBeGreaterThan(0.2)
    }
  },
)
