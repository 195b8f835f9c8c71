import type { Pattern } from '../pattern/pattern'
import type { Point } from './path'
import type { Item } from './scene'
import { weights } from './sizes'
import type { Slots } from './slots'
import { stroked } from './items'

/** A cell that was hit. Row and peg are 0-based. */
export interface Hit {
  readonly row: number
  readonly peg: number
  /** Chart column; -1 where the chart does not reach. */
  readonly column: number
}

export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/**
 * Where cells lie in a drawing: used by the drawing itself and for pointer hits. Millimetres, y
 * down. `u` counts slots in peg order, `v` rows up the fabric; cell (row, slot) reaches from
 * (slot, row) to (slot + 1, row + 1).
 */
export interface Plan {
  readonly kind: 'flat' | 'ring'
  /** Equal for drawings of the same layout in which every cell lies at the same place. */
  readonly key: string
  /** Size of the whole drawing. */
  readonly width: number
  readonly height: number
  readonly slots: Slots
  /** First and last row that is drawn. */
  readonly firstRow: number
  readonly lastRow: number
  /** The smallest cell. */
  readonly smallest: { readonly width: number; readonly height: number }
  /** Size of numbers. */
  readonly text: number
  readonly point: (u: number, v: number) => Point
  /** The origin of a row's layer; a row is drawn relative to it. */
  readonly origin: (row: number) => Point
  /** Width and height of the cells of one row. */
  readonly cellOf: (row: number) => { readonly width: number; readonly height: number }
  /** Slot coordinate and row coordinate of a place; null where there is no cell. */
  readonly find: (x: number, y: number) => { readonly slot: number; readonly row: number } | null
  /** Closed path round cells `fromSlot` .. `toSlot` of rows `fromRow` .. `toRow`, on the page. */
  readonly outline: (fromSlot: number, toSlot: number, fromRow: number, toRow: number) => string
}

export interface Geometry extends Plan {
  /** Null where there is no cell, and on a column that has no peg on this loom. */
  readonly at: (x: number, y: number) => Hit | null
  /** Null for a peg or row that is not drawn; so are the next two. */
  readonly centre: (row: number, peg: number) => Point | null
  /** As the right side is seen: bottom left, bottom right, top right, top left. */
  readonly corners: (row: number, peg: number) => readonly [Point, Point, Point, Point] | null
  /** The upright box that just holds the cell. */
  readonly cellBox: (row: number, peg: number) => Box | null
}

export function withCells(plan: Plan): Geometry {
  const { slots, firstRow, lastRow, point } = plan
  const slotAt = (row: number, peg: number): number | undefined =>
    row >= firstRow && row <= lastRow ? slots.slotOf(peg) : undefined
  return {
    ...plan,
    at: (x, y) => {
      const found = plan.find(x, y)
      if (!found) return null
      const { slot, row } = found
      const peg = slots.pegOf[slot] ?? -1
      return peg < 0 ? null : { row, peg, column: slots.columnOf[slot] ?? -1 }
    },
    centre: (row, peg) => {
      const slot = slotAt(row, peg)
      return slot === undefined ? null : point(slot + 0.5, row + 0.5)
    },
    corners: (row, peg) => {
      const slot = slotAt(row, peg)
      if (slot === undefined) return null
      const [left, right] = slots.leftward ? [slot + 1, slot] : [slot, slot + 1]
      return [point(left, row), point(right, row), point(right, row + 1), point(left, row + 1)]
    },
    cellBox: (row, peg) => {
      const slot = slotAt(row, peg)
      if (slot === undefined) return null
      const rim: Point[] = []
      for (let step = 0; step <= 8; step++)
        rim.push(point(slot + step / 8, row), point(slot + step / 8, row + 1))
      const xs = rim.map(([x]) => x)
      const ys = rim.map(([, y]) => y)
      const [x, y] = [Math.min(...xs), Math.min(...ys)]
      return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
    },
  }
}

/** Height of a cell for each mm of its width: from the gauge, or square. */
export const cellRatio = ({ style, gauge }: Pick<Pattern, 'style' | 'gauge'>): number =>
  style.cell === 'gauge' && gauge ? gauge.stitches / gauge.rows : 1

/** The frame of the current place, or of one being pointed at; null where it is not drawn. */
export function placeMark(
  geometry: Geometry,
  row: number,
  peg: number,
  pegs = 1,
): Extract<Item, { kind: 'path' }> | null {
  const { slots, firstRow, lastRow } = geometry
  const first = slots.slotOf(peg)
  if (first === undefined || row < firstRow || row > lastRow) return null
  const last = Math.min(first + pegs - 1, slots.count - 1)
  const side = Math.min(geometry.cellOf(row).width, geometry.cellOf(row).height)
  return stroked(
    geometry.outline(first, last, row, row),
    'place',
    Math.max(weights.box, side * 0.14),
  )
}
