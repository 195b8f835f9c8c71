import type { Box } from '../geometry'
import type { Point } from '../path'
import type { Across } from './across'
import type { Heights } from './heights'
import type { StitchSize } from './shapes'

export const fabricViews = ['flat', 'tube'] as const
export type FabricView = (typeof fabricViews)[number]

/** Where the loops of rows and pegs lie in the drawing, mm. Rows and pegs are 0-based. */
export interface FabricGeometry {
  readonly width: number
  readonly height: number
  readonly stitch: StitchSize
  /** The whole fabric, lying flat. */
  readonly cloth: StitchSize
  /** Is it opened at short rows, so that it lies higher than it is? */
  readonly opened: boolean
  /** Null beside the fabric, and where it is opened at short rows. */
  readonly at: (x: number, y: number) => { readonly row: number; readonly peg: number } | null
  /** Null for what is not seen, or not worked in that row. */
  readonly centre: (row: number, peg: number) => Point | null
  /** The upright box that holds the stitch; null as for the centre. */
  readonly cellBox: (row: number, peg: number) => Box | null
}

export const margin = 2
/** Room for the cast-on and for the heads of the last loops, in rows. */
export const overhang = { below: 0.9, above: 0.9 } as const

/** The fabric bent round a tube, or lying flat; and back again. */
export interface Bend {
  /** Half of what is seen, mm. */
  readonly half: number
  readonly x: (flat: number) => number
  readonly flat: (x: number) => number
  readonly shows: (flat: number) => boolean
}

export function bendOf(view: FabricView, pegs: number, width: number): Bend {
  if (view === 'flat') {
    const half = (pegs * width) / 2
    return { half, x: (x) => x, flat: (x) => x, shows: () => true }
  }
  const radius = (pegs * width) / (2 * Math.PI)
  const quarter = (Math.PI / 2) * radius
  const clamp = (x: number, most: number): number => Math.max(-most, Math.min(most, x))
  return {
    half: radius,
    x: (x) => radius * Math.sin(clamp(x, quarter) / radius),
    flat: (x) => radius * Math.asin(clamp(x / radius, 1)),
    shows: (x) => Math.abs(x) < quarter,
  }
}

export interface Frame {
  readonly width: number
  readonly height: number
  /** Where x = 0 and the cast-on lie. */
  readonly middle: number
  readonly bottom: number
}

export function frameOf(bend: Bend, { highest }: Heights, { height }: StitchSize): Frame {
  const tall = (highest + overhang.below + overhang.above) * height
  return {
    width: 2 * (bend.half + margin),
    height: tall + 2 * margin,
    middle: bend.half + margin,
    bottom: margin + (highest + overhang.above) * height,
  }
}

export function fabricGeometry(
  heights: Heights,
  covers: (row: number, peg: number) => boolean,
  across: Across,
  bend: Bend,
  frame: Frame,
  stitch: StitchSize,
): FabricGeometry {
  const { middle, bottom } = frame
  /** `rowAt[peg][level]`, made when it is first asked for. */
  let rowAt: (number | undefined)[][] | null = null
  const levels = (): (number | undefined)[][] => {
    if (rowAt) return rowAt
    const found = Array.from({ length: across.pegs }, (): (number | undefined)[] => [])
    heights.base.forEach((base, row) =>
      base.forEach((level, peg) => {
        if (covers(row, peg)) (found[peg] ??= [])[level] = row
      }),
    )
    return (rowAt = found)
  }
  return {
    width: frame.width,
    height: frame.height,
    stitch,
    cloth: { width: across.pegs * stitch.width, height: heights.highest * stitch.height },
    opened: heights.opened,
    at: (x, y) => {
      if (Math.abs(x - middle) > bend.half) return null
      const peg = across.pegAt(bend.flat(x - middle) / stitch.width)
      const row = levels()[peg]?.[Math.floor((bottom - y) / stitch.height)]
      return row === undefined ? null : { row, peg }
    },
    centre: (row, peg) => {
      const level = heights.base[row]?.[peg]
      const flat = across.of(peg) * stitch.width
      if (level === undefined || !covers(row, peg) || !bend.shows(flat)) return null
      return [middle + bend.x(flat), bottom - (level + 0.5) * stitch.height]
    },
    cellBox: (row, peg) => {
      const level = heights.base[row]?.[peg]
      const flat = across.of(peg) * stitch.width
      if (level === undefined || !covers(row, peg) || !bend.shows(flat)) return null
      const [left, right] = [bend.x(flat - stitch.width / 2), bend.x(flat + stitch.width / 2)]
      return {
        x: middle + left,
        y: bottom - (level + 1) * stitch.height,
        width: right - left,
        height: stitch.height,
      }
    },
  }
}
