import type { Slots } from './slots'
import { closed, type Point } from './path'
import type { Setting } from './signPath'

/** A row of a ring, as a cross is laid into it: `point` is relative to the middle of the ring. */
export interface RingRow {
  readonly slots: Slots
  readonly point: (u: number, v: number) => Point
  /** 0-based. */
  readonly row: number
  /** Of a cell in the middle of the row, mm. */
  readonly cell: { readonly width: number; readonly height: number }
}

/** A sign as wide as this for its height is still read; outer cells are wider. */
const leastRatio = 0.6
/** The most that a whole sign is wider than high. */
const mostAcross = 8
/** A sign that the ring would leave by no more than this share of its height stays straight. */
const straightUpTo = 0.16

/**
 * How a cross lies in a ring: its form is kept, whatever the sectors are, and it stands in the middle of
 * them, turned as one piece; where it is long, it is bent along the ring with its height kept.
 */
export function crossSetting(
  slot: number,
  columns: number,
  { slots, point, row, cell: { width, height } }: RingRow,
): { readonly setting: Setting; readonly ratio: number } {
  const middle = slot + columns / 2
  const centre = point(middle, row + 0.5)
  const radius = Math.hypot(...centre)
  const column = Math.min(width, height / leastRatio, (mostAcross * height) / columns)
  const outward = Math.hypot(...point(middle, row + 1)) > radius ? 1 : -1
  const angle = Math.atan2(centre[0], -centre[1])
  const aside = point(middle + (slots.leftward ? -0.1 : 0.1), row + 0.5)
  const sense = Math.sign(Math.cos(angle) * aside[0] + Math.sin(angle) * aside[1])
  const along = (x: number) => sense * (x - columns / 2) * column
  const up = (y: number) => outward * (0.5 - y) * height
  const sag = (columns * column) ** 2 / (8 * radius)
  const unit = Math.min(column, height)
  const ratio = height / column
  if (sag <= straightUpTo * height) {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
    const place = (x: number, y: number): Point => {
      const [away, side] = [radius + up(y) - sag / 2, along(x)]
      return [away * sin + side * cos, -away * cos + side * sin]
    }
    return { ratio, setting: { place, unit, straight: 0 } }
  }
  const place = (x: number, y: number): Point => {
    const [turn, away] = [angle + along(x) / radius, radius + up(y)]
    return [away * Math.sin(turn), -away * Math.cos(turn)]
  }
  return { ratio, setting: { place, unit, straight: (0.03 * radius) / column } }
}

/** Paper over the sectors of a cross, so that no spoke goes through it. */
export function crossGround(slot: number, columns: number, { point, row }: RingRow): string {
  const [from, to] = [slot + 0.04, slot + columns - 0.04]
  const steps = 4 * columns
  const rim = (v: number): Point[] =>
    Array.from({ length: steps + 1 }, (_, step) => point(from + ((to - from) * step) / steps, v))
  return closed([...rim(row + 0.05), ...rim(row + 0.95).toReversed()])
}
