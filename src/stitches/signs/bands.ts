import { dot, polygon, stroke, type Mark, type SignPoint } from '../sign'
import { atBothEnds, clearance, clippedTo, rightOf, strokes, type CrossCell } from './crossCell'

/**
 * A cross after the Craft Yarn Council's chart symbols, from memory in all details: groups are bands as wide
 * as their pegs. The front band is drawn heavily and never broken, and its paper hides the grid. Knit
 * behind is grey with one fine edge; purl is shown by dots, in front and behind.
 */

/** The band rises as steeply as this, degrees, where that leaves it half of its way at least. */
const slope = 24
const dotShare = 0.13
const dotRoom = 0.08
const edge = 0.05

interface Band {
  readonly top: number
  readonly bottom: number
  /** Corners: at the bottom left and right, at the top right and left. */
  readonly corners: readonly [SignPoint, SignPoint, SignPoint, SignPoint]
  /** How far it goes to the side. */
  readonly travel: number
  /** From its columns to its outline, at the sides. */
  readonly inset: number
}

function bandOf({ front, back, width, ratio, side }: CrossCell): Band {
  const half = (strokes.front * side) / 2
  const top = 0.07 * ratio + half
  const bottom = ratio - top
  const inset = edge + half
  const steep = (bottom - top) / Math.tan((slope * Math.PI) / 180)
  const most = Math.min(back, Math.max(steep, 0.5 * Math.min(front, back)))
  const margin = (back - most) / 2
  const left = Math.max(margin, inset)
  const right = left + front - Math.max(0, inset - margin)
  const corners = [
    [left, bottom],
    [right, bottom],
    [width - left, top],
    [width - right, top],
  ] as const
  return { top, bottom, corners, travel: width - left - right, inset }
}

export function bands(cell: CrossCell): Mark[] {
  const band = bandOf(cell)
  const behind = cell.backTexture === 'purl' ? purlBehind(cell, band) : knitBehind(cell, band)
  const inFront = cell.frontTexture === 'purl' ? purlInFront(cell, band) : []
  return [
    polygon('front', ...band.corners),
    polygon('ground', ...band.corners),
    ...inFront,
    ...atBothEnds(behind, cell),
  ]
}

/** What is seen of a knitted group at the right end: grey, and its outer edge as a fine line. */
function knitBehind({ front, width, side }: CrossCell, band: Band): Mark[] {
  const { top, bottom, travel, inset } = band
  const [, low, high] = band.corners
  const height = bottom - top
  const aside = ((strokes.front / 2 + clearance) * side * Math.hypot(travel, height)) / height
  const outer = width - edge - (strokes.fine * side) / 2
  const slant = Math.min(travel, Math.max(front - inset, 0.2))
  const seen = clippedTo(
    [
      [low[0] - 1, bottom],
      [outer, bottom],
      [outer - slant, top],
      [low[0] - 1 - slant, top],
    ],
    [low[0] + aside, bottom],
    [high[0] + aside, top],
  )
  const [apex] = seen.toSorted(([ax, ay], [bx, by]) => ay - by || bx - ax)
  return apex ? [polygon('behind', ...seen), stroke('fine', [outer, bottom], apex)] : []
}

/** Dots in those columns of the group that are free, and in the outermost in any case, at the right end. */
function purlBehind({ front, back, width, side }: CrossCell, band: Band): Mark[] {
  const { bottom } = band
  const [, low, high] = band.corners
  const half = (strokes.front * side) / 2
  const radius = dotShare * side
  const room = (x: number, r: number) =>
    rightOf([x, bottom + half - r], low, high) - r - half - dotRoom * side
  const put = (x: number, r: number) => dot(x, bottom + half - r, r)
  return Array.from({ length: back }, (_, strand) => front + strand + 0.5).flatMap((x, strand) => {
    if (room(x, radius) >= 0) return [put(x, radius)]
    if (strand < back - 1) return []
    const least = 0.07 * side
    let r = radius
    while (r > least && room(width - 0.06 - r, r) < 0) r -= 0.005
    return [put(width - 0.06 - r, r)]
  })
}

/** A dot for each loop, along the band, as far apart as its outline leaves room. */
function purlInFront({ front, side }: CrossCell, band: Band): Mark[] {
  const { top, bottom, travel } = band
  const [left, low, high, right] = band.corners
  const half = (strokes.front * side) / 2
  const height = bottom - top
  const radius = Math.min(
    dotShare * side,
    (height * Math.min(1, front / travel)) / 2 - half - 0.05 * side,
  )
  const isLong = travel >= 0.5 * front
  const [wide, rise] = isLong ? [high[0] - left[0], top - bottom] : [front, 0]
  const centre: SignPoint = [(left[0] + high[0]) / 2, (top + bottom) / 2]
  const places = (together: number) =>
    Array.from({ length: front }, (_, loop): SignPoint => {
      const share = together * ((loop + 0.5) / front - 0.5)
      return [centre[0] + share * wide, centre[1] + share * rise]
    })
  const least = radius + half + dotRoom * side
  const hasRoom = (point: SignPoint) =>
    rightOf(point, left, right) >= least && -rightOf(point, low, high) >= least
  let together = 1
  while (together > 0.5 && !places(together).every(hasRoom)) together -= 0.05
  return places(together).map(([x, y]) => dot(x, y, radius))
}
