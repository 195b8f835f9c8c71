import { chartOn } from '../charts'
import type { Cell, Chart, Run, Sheet } from '../pattern'
import { placed } from '../row'
import { replaceIn, stitchesIn, tornBy, type Area, type At } from './area'

/** Rows that are shifted, the columns in which that is done, and whether what leaves at one end comes in at the other. */
export interface Shifting extends Area {
  readonly wraps: boolean
}

/** In a repeat stitches go round; without one they leave the chart. */
export function shiftingOf({ repeat, columns: count }: Chart, { rows, columns }: Area): Shifting {
  const inRepeat = repeat && columns.from >= repeat.from && columns.to <= repeat.to
  return inRepeat
    ? { rows, columns: repeat, wraps: true }
    : { rows, columns: { from: 0, to: count - 1 }, wraps: false }
}

const widthOf = ({ from, to }: Run): number => to - from + 1

/** The place of a column, counted from the first that is shifted. */
const moved = (place: number, by: number, width: number, wraps: boolean): number =>
  wraps ? (((place + by) % width) + width) % width : place + by

/** Shift rows so many pegs on; fewer than none: back. Nothing is left of stitches that are cut but ground. */
export function shiftRows(sheet: Sheet, shifting: Shifting, by: number): Sheet {
  const { columns, wraps } = shifting
  const width = widthOf(columns)
  const ground = sheet.style.background
  return replaceIn(sheet, shifting, (cells) => {
    const shifted: Cell[] = cells.map(() => ground)
    for (const { stitch, column, columns: count } of placed({ cells })) {
      const to = moved(column, by, width, wraps)
      if (to < 0 || to + count > width) continue
      shifted.fill(null, to, to + count)
      shifted[to] = stitch
    }
    return shifted
  })
}

/** What shifting would cut: at the edges of the repeat or the chart. */
export function tornByShift(sheet: Sheet, shifting: Shifting, by: number): readonly At[] {
  const chart = chartOn(sheet)
  const { columns, rows, wraps } = shifting
  const width = widthOf(columns)
  const atEdges = tornBy(chart, shifting)
  const atSeam = stitchesIn(chart, rows).filter((item) => {
    const place = item.column - columns.from
    if (item.columns === 1 || atEdges.some((torn) => isSame(torn, item))) return false
    if (place < 0 || place >= width) return false
    const to = moved(place, by, width, wraps)
    return to < 0 || to + item.columns > width
  })
  return [...atEdges, ...atSeam]
}

const isSame = (one: At, other: At): boolean => one.row === other.row && one.column === other.column
