import type { Pattern } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import { border, largestNumber, timesText } from './flatGeometry'
import { cellRatio, withCells, type Geometry } from './geometry'
import { linear } from './linear'
import { arcs, type Point } from './path'
import { numberSize, smallestReadable, textWidth } from './sizes'
import { slotsOf } from './slots'

export interface RingOptions {
  /** Width of a cell, mm, from which its height follows by the gauge. Rings are that high. */
  readonly cell?: number
  /** The least width of a cell of the innermost ring, mm; three quarters of `cell`, if readable. */
  readonly innermost?: number
  readonly castOn?: Pattern['style']['ringCastOn']
}

/**
 * The ring is opened at the top by a straight lane, as wide everywhere, for the numbers of the
 * rows. Angles are clockwise from the top, in radians.
 */
export interface RingGeometry extends Geometry {
  readonly kind: 'ring'
  readonly centrePoint: Point
  /** Radii of the grid. */
  readonly inner: number
  readonly outer: number
  readonly castOn: Pattern['style']['ringCastOn']
  /** Do rising pegs run clockwise on the page? */
  readonly clockwise: boolean
  readonly radius: (v: number) => number
  readonly angle: (u: number, radius: number) => number
  /** Width of the lane, and places in it from its middle, towards peg 1. */
  readonly lane: {
    readonly width: number
    readonly numbers: number
    readonly marker: number
    readonly finding: number
    readonly band: number
  }
}

/**
 * Where the cells of the ring chart lie. The right side is shown in both layouts: with the cast-on
 * edge outside the ring runs in the loom's own direction seen from above, with it inside it runs
 * the other way; anything else would mirror every cross.
 */
export function ringGeometry(work: Work, options: RingOptions = {}): RingGeometry {
  const { pattern } = work
  const cell = options.cell ?? 4
  const height = cell * cellRatio(pattern)
  const least = options.innermost ?? Math.max(smallestReadable.cell, 0.75 * cell)
  const castOn = options.castOn ?? pattern.style.ringCastOn
  const slots = slotsOf(work, 'loom')
  const clockwise = slots.leftward === (castOn === 'outside')
  const rows = work.chart.rows.length
  const smallest = numberSize(Math.min(least, height))
  const { inner: nearly } = hubFor(work, smallest, slots.count, least)
  const text = Math.max(smallest, (2 * (nearly + rows * height)) / numbersAcross)
  const { lane, gap, inner } = hubFor(work, text, slots.count, least)
  const outer = inner + rows * height
  const rim = text * 0.6 + textWidth(String(slots.count), text)
  const centre = border + rim + outer
  const centrePoint: Point = [centre, centre]

  const radius = linear([0, rows], castOn === 'outside' ? [outer, inner] : [inner, outer])
  const sector = (r: number): number => (2 * Math.PI - 2 * gap(r)) / slots.count
  const turned = (angle: number): number => (clockwise ? angle : -angle)
  const angle = (u: number, r: number): number => {
    const start = gap(r)
    return turned(start + (u * (2 * Math.PI - 2 * start)) / slots.count)
  }
  const polar = (u: number, r: number): Point => {
    const a = angle(u, r)
    return [centre + r * Math.sin(a), centre - r * Math.cos(a)]
  }
  const widthAt = (r: number): number => r * sector(r)

  return {
    ...withCells({
      kind: 'ring',
      key: `ring ${clockwise} ${castOn} ${rows} ${height} ${inner} ${lane.width}`,
      width: 2 * centre,
      height: 2 * centre,
      slots,
      firstRow: 0,
      lastRow: rows - 1,
      smallest: { width: widthAt(inner), height },
      text,
      point: (u, v) => polar(u, radius(v)),
      origin: () => centrePoint,
      cellOf: (row) => ({ width: widthAt(radius(row + 0.5)), height }),
      find: (x, y) => {
        const r = Math.hypot(x - centre, y - centre)
        const row = Math.floor(radius.invert(r))
        if (row < 0 || row >= rows) return null
        const full = 2 * Math.PI
        const a = (turned(Math.atan2(x - centre, centre - y)) + full) % full
        const slot = Math.floor((a - gap(r)) / sector(r))
        return slot >= 0 && slot < slots.count ? { slot, row } : null
      },
      outline: (fromSlot, toSlot, fromRow, toRow) => {
        const [r0, r1] = [radius(fromRow), radius(toRow + 1)]
        const [u0, u1] = [fromSlot, toSlot + 1]
        const there = [r0, angle(u0, r0), angle(u1, r0)] as const
        return `${arcs(centrePoint, there, [r1, angle(u1, r1), angle(u0, r1)])}Z`
      },
    }),
    kind: 'ring',
    centrePoint,
    inner,
    outer,
    castOn,
    clockwise,
    radius,
    angle,
    lane,
  }
}

/** Numbers are as high as this part of the ring's width, or higher. */
const numbersAcross = 40

/** The lane for numbers of this size, and the smallest ring round which cells are not too narrow. */
function hubFor(work: Work, text: number, count: number, least: number) {
  const lane = laneFor(work, text)
  const half = lane.width / 2
  const gap = (radius: number): number => Math.asin(Math.min(1, half / radius))
  return { lane, gap, inner: innerRadius(count, least, gap, half) }
}

function laneFor(work: Work, text: number): RingGeometry['lane'] {
  const digits = textWidth(String(largestNumber(work)), text)
  const pad = text * 0.35
  const mark = text * 0.9
  const hasBands = work.chart.bands.length > 0
  const bands = hasBands ? text * 0.5 + textWidth(timesText(10), text) : 0
  const width = pad * 4 + digits + 2 * mark + bands
  const edge = width / 2
  return {
    width,
    numbers: edge - pad,
    marker: edge - 2 * pad - digits - mark / 2,
    finding: -edge + bands + pad + mark / 2,
    band: -edge + pad,
  }
}

/** The smallest radius at which no cell of the innermost ring is narrower than `least`. */
function innerRadius(
  count: number,
  least: number,
  gap: (radius: number) => number,
  half: number,
): number {
  let radius = Math.max((count * least) / (2 * Math.PI), half * 1.5)
  for (let round = 0; round < 40; round++) {
    const width = (radius * (2 * Math.PI - 2 * gap(radius))) / count
    if (width >= least) break
    radius *= least / width
  }
  return radius
}
