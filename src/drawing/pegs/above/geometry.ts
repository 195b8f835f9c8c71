import { runsRightToLeft } from '../../../loom/direction'
import type { LoomSetup } from '../../../pattern/pattern'
import { polyline, type Point } from '../../path'

export interface AboveOptions {
  /**
   * The whole drawing is at most about this wide, mm; else as wide as pegs 3 mm apart need, at
   * least 130. Pegs are never drawn further apart than 11 mm.
   */
  readonly width?: number
  /** The peg in front of the knitter, at the bottom of a ring; peg 1 unless said. */
  readonly front?: number
}

/**
 * The loom seen from above, the knitter at the bottom of the page; mm, y down. `along` counts pegs:
 * peg p stands at p, gap g at g - 0.5. `out` is the distance from the line of the pegs, in units:
 * outside is positive. A *unit* is the distance from peg to peg.
 */
export interface AboveGeometry {
  readonly kind: LoomSetup['shape']
  readonly pegs: number
  readonly width: number
  readonly height: number
  readonly unit: number
  /** Radius of a peg, mm. */
  readonly pegRadius: number
  /** Radius of the ring of pegs, mm; 0 for a bar. */
  readonly radius: number
  readonly centre: Point
  readonly leftward: boolean
  readonly at: (along: number, out: number) => Point
  /** Clockwise from the top, radians: the way outward. */
  readonly outward: (along: number) => number
  /** A line that follows the pegs. */
  readonly follow: (from: number, to: number, out: number) => string
  readonly peg: (peg: number) => Point
  /** The peg whose place this is; null beside the loom. */
  readonly pegAt: (x: number, y: number) => number | null
}

const usualWidth = (shape: LoomSetup['shape'], pegs: number): number =>
  Math.max(130, shape === 'ring' ? (3 * pegs) / Math.PI + 24 : 3 * (pegs + 4))

/** Room for numbers, needle and yarn on either side of the pegs, in units but at least these mm. */
const outsideRoom = (unit: number): number => Math.max(3.4 * unit, 12)

export function aboveGeometry(
  { shape, pegs, direction }: LoomSetup,
  { width = usualWidth(shape, pegs), front = 0 }: AboveOptions = {},
): AboveGeometry {
  // Seen from above, clockwise pegs pass the knitter, at the bottom, from right to left.
  const leftward = runsRightToLeft(direction)
  const way = leftward ? 1 : -1
  return shape === 'ring'
    ? ring(pegs, width, front, leftward, way)
    : bar(pegs, width, leftward, way)
}

function ring(
  pegs: number,
  width: number,
  front: number,
  leftward: boolean,
  way: number,
): AboveGeometry {
  const share = (2 * Math.PI) / pegs
  // The width is that of the ring and of the room round it, which depends on the unit.
  const half0 = width / 2
  const unit = Math.max(0.5, Math.min(11, (half0 - 12) * share, half0 / (1 / share + 3.4)))
  const radius = unit / share
  const half = radius + outsideRoom(unit)
  const centre: Point = [half, half]
  const outward = (along: number): number => Math.PI + way * share * (along - front)
  const at = (along: number, out: number): Point => {
    const angle = outward(along)
    const r = radius + out * unit
    return [half + r * Math.sin(angle), half - r * Math.cos(angle)]
  }
  return {
    kind: 'ring',
    pegs,
    width: 2 * half,
    height: 2 * half,
    unit,
    pegRadius: 0.2 * unit,
    radius,
    centre,
    leftward,
    at,
    outward,
    follow: (from, to, out) => {
      const steps = Math.max(2, Math.ceil((Math.abs(to - from) * share) / 0.12))
      return polylineOf(from, to, steps, (along) => at(along, out))
    },
    peg: (peg) => at(peg, 0),
    pegAt: (x, y) => {
      const away = Math.hypot(x - half, y - half)
      if (Math.abs(away - radius) > Math.max(1.2 * unit, 4)) return null
      const angle = Math.atan2(x - half, half - y)
      const along = Math.round((way * (angle - Math.PI)) / share + front)
      return ((along % pegs) + pegs) % pegs
    },
  }
}

function bar(pegs: number, width: number, leftward: boolean, way: number): AboveGeometry {
  const unit = Math.min(11, width / (pegs + 2))
  const side = Math.max(unit, 6)
  const inner = Math.max(2.6 * unit, 9)
  const all = pegs * unit + 2 * side
  const height = inner + outsideRoom(unit)
  const x = (along: number): number =>
    leftward ? all - side - (along + 0.5) * unit : side + (along + 0.5) * unit
  const at = (along: number, out: number): Point => [x(along), inner + out * unit]
  return {
    kind: 'bar',
    pegs,
    width: all,
    height,
    unit,
    pegRadius: 0.2 * unit,
    radius: 0,
    centre: [all / 2, inner],
    leftward,
    at,
    outward: () => Math.PI,
    follow: (from, to, out) => polylineOf(from, to, 1, (along) => at(along, out)),
    peg: (peg) => at(peg, 0),
    pegAt: (px, py) => {
      if (Math.abs(py - inner) > Math.max(1.2 * unit, 4)) return null
      const peg = Math.round((way * (all / 2 - px)) / unit + (pegs - 1) / 2)
      // No -0.
      return peg >= 0 && peg < pegs ? peg + 0 : null
    },
  }
}

function polylineOf(from: number, to: number, steps: number, at: (along: number) => Point): string {
  const share = (to - from) / steps
  return polyline(Array.from({ length: steps + 1 }, (_, i) => at(from + share * i)))
}
