import type { Run } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import { cellRatio, withCells, type Geometry } from './geometry'
import { linear } from './linear'
import { rectangle } from './path'
import { numberSize, textWidth } from './sizes'
import { slotsOf, usualColumns, type ColumnKind } from './slots'

export interface FlatOptions {
  /** Width of a cell, mm; its height follows from the gauge. */
  readonly cell?: number
  /**
   * One column for each chart column (repeat boxed), or for each peg of the loom; the one that shows
   * which pegs each row works, unless said otherwise.
   */
  readonly columns?: ColumnKind
  /** Numbers are at least this high, mm, however small the cells. */
  readonly leastText?: number
  /** Only these rows, for a sheet of several. */
  readonly rows?: Run
  /** Only these columns (of the chart, or pegs of the loom). */
  readonly slots?: Run
}

export interface FlatGeometry extends Geometry {
  readonly kind: 'flat'
  /** The grid inside the drawing. */
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  /** Distance from the grid to the middle of the findings' marks and of the bands' brackets. */
  readonly margin: { readonly finding: number; readonly band: number }
}

export const border = 2

/** The largest number a row or round of the work has. */
export const largestNumber = ({ numbers, passes }: Work): number =>
  Math.max(numbers.at(-1) ?? 1, passes.length)

/** Beside the bracket of a band: times in all. */
export const timesText = (times: number): string => `\u00d7 ${times}`

/** Where the cells of the flat chart lie. Row 1 at the bottom, peg 1 on its true side. */
export function flatGeometry(work: Work, options: FlatOptions = {}): FlatGeometry {
  const { pattern, chart, layout } = work
  const width = options.cell ?? 4
  const height = width * cellRatio(pattern)
  const slots = slotsOf(work, options.columns ?? usualColumns(chart, layout), options.slots)
  const lastChartRow = chart.rows.length - 1
  const firstRow = Math.max(0, options.rows?.from ?? 0)
  const lastRow = Math.min(lastChartRow, options.rows?.to ?? lastChartRow)
  const text = Math.max(numberSize(Math.min(width, height)), options.leastText ?? 0)
  const numbered = 1 + Math.max(textWidth(String(largestNumber(work)), text), width * 0.9)
  const ends = work.firstRuns.slice(firstRow, lastRow + 1)
  // Beyond the last peg numbers stand only where a row starts there.
  const numbers = ends.every((run) => run.rightToLeft === slots.leftward) ? 0.5 : numbered
  const marker = text * 1.2
  const hasBands = chart.bands.length > 0
  const bands = hasBands ? text + textWidth(timesText(10), text) : 0
  const near = border + numbered + marker
  const beyond = border + numbers + marker + bands
  const [leftMargin, rightMargin] = slots.leftward ? [beyond, near] : [near, beyond]

  const left = leftMargin
  const top = border + text * 0.5
  const right = left + slots.count * width
  const rows = lastRow - firstRow + 1
  const bottom = top + rows * height
  const repeats = slots.kind === 'chart' && slots.copies.length > 0
  const below = text * (repeats ? 5.4 : 3.6) + border

  const across = linear([0, slots.count], slots.leftward ? [right, left] : [left, right])
  const up = linear([firstRow, lastRow + 1], [bottom, top])

  return {
    ...withCells({
      kind: 'flat',
      key: `flat ${firstRow}-${lastRow} ${width} ${height} ${text} ${left} ${rightMargin}`,
      width: right + rightMargin,
      height: bottom + below,
      slots,
      firstRow,
      lastRow,
      smallest: { width, height },
      text,
      point: (u, v) => [across(u), up(v)],
      origin: (row) => [left, up(row + 1)],
      cellOf: () => ({ width, height }),
      find: (x, y) => {
        const slot = Math.floor(across.invert(x))
        const row = Math.floor(up.invert(y))
        const inside = slot >= 0 && slot < slots.count && row >= firstRow && row <= lastRow
        return inside ? { slot, row } : null
      },
      outline: (fromSlot, toSlot, fromRow, toRow) => {
        const x = slots.leftward ? across(toSlot + 1) : across(fromSlot)
        return rectangle(
          x,
          up(toRow + 1),
          (toSlot - fromSlot + 1) * width,
          (toRow - fromRow + 1) * height,
        )
      },
    }),
    kind: 'flat',
    left,
    top,
    right,
    bottom,
    margin: { finding: numbers + marker * 0.5, band: numbers + marker + text * 0.4 },
  }
}

/** The number of a row or a peg beside the chart. */
export type NumberHit =
  { readonly of: 'row'; readonly row: number } | { readonly of: 'peg'; readonly peg: number }

/** The number that is hit beside a flat chart; null: none. */
export function numberAt(geometry: Geometry, x: number, y: number): NumberHit | null {
  if (!isFlat(geometry)) return null
  const { left, right, top, bottom, text } = geometry
  const inside = (value: number, least: number, most: number) =>
    Math.min(most - 0.01, Math.max(least + 0.01, value))
  if (y > top && y < bottom && (x <= left || x >= right)) {
    const hit = geometry.at(inside(x, left, right), y)
    return hit && { of: 'row', row: hit.row }
  }
  if (x > left && x < right && y >= bottom && y < bottom + 1.8 * text) {
    const hit = geometry.at(x, inside(y, top, bottom))
    return hit && { of: 'peg', peg: hit.peg }
  }
  return null
}

const isFlat = (geometry: Geometry): geometry is FlatGeometry => geometry.kind === 'flat'
