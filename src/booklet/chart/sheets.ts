import { flatGeometry, type FlatOptions } from '../../drawing/flatGeometry'
import { cellRatio } from '../../drawing/geometry'
import { slotsOf, usualColumns } from '../../drawing/slots'
import { memo } from '../../pattern/memo'
import type { Row, Run } from '../../pattern/pattern'
import { placed } from '../../pattern/row'
import type { Work } from '../../pattern/work'
import type { Column } from '../page/blocks'
import { markSpace } from './marks'
import { cellSizes } from '../page/typeScale'
import { bestTiling, type CellSize, type Room, type TiledChart, type Tiling } from './tiling'

// Where a chart's sheets are cut. All lengths here are those of the drawing; in large print it is
// scaled afterwards, so room and wishes are divided by that scale first.

/**
 * For the line before each chart column: how many columns a stitch that stands across it in some
 * row reaches back; 0 where the chart can be cut.
 */
const reachesIn = memo((rows: readonly Row[]): readonly number[] => {
  const reach: number[] = []
  for (const row of new Set(rows))
    for (const { column, columns } of placed(row))
      for (let offset = 1; offset < columns; offset++)
        reach[column + offset] = Math.max(reach[column + offset] ?? 0, offset)
  return reach
})

const tiledChart = (work: Work, drawn: Run | null): TiledChart => {
  const { chart, pattern } = work
  const reach = reachesIn(chart.rows)
  const { columnOf, count } = drawnSlots(work)
  const { from, to } = drawn ?? { from: 0, to: count - 1 }
  return {
    columns: to - from + 1,
    rows: chart.rows.length,
    every: pattern.style.heavyEvery,
    reach: (slot) => reach[columnOf[slot + from] ?? -1] ?? 0,
  }
}

/** All that stands side by side in a chart as it is printed; its sheets are counted in these. */
export const drawnSlots = (work: Work) => slotsOf(work, usualColumns(work.chart, work.layout))

/** The tiling counts from the first column that is drawn; the chart from its own first one. */
function inChart(tiling: Tiling, drawn: Run | null): Tiling {
  const from = drawn?.from ?? 0
  if (from === 0) return tiling
  const moved = (run: Run): Run => ({ from: run.from + from, to: run.to + from })
  return {
    ...tiling,
    sheets: tiling.sheets.map((sheet) => ({ ...sheet, columns: moved(sheet.columns) })),
    shared: tiling.shared.map(moved),
  }
}

/** How large cells are to be, and which columns are drawn where not all are. */
export interface SheetWishes {
  /** Width of a cell, mm; null to have it chosen. */
  readonly wished: number | null
  readonly drawn: Run | null
}

/** Space that the numbers and marks round a chart's grid take at this cell width. */
function around(work: Work, options: FlatOptions): Room {
  const { width, height, left, right, top, bottom } = flatGeometry(work, options)
  return { width: width - (right - left), height: height - (bottom - top) }
}

function sizeAt(work: Work, room: Room, { type: { numbers } }: Column, marks: number) {
  const ratio = cellRatio(work.pattern)
  return (width: number): { cell: CellSize; room: Room } => {
    const margins = around(work, { cell: width, leastText: numbers })
    return {
      cell: { width, height: width * ratio },
      room: {
        width: room.width - margins.width - 2 * marks,
        height: room.height - margins.height - 2 * marks,
      },
    }
  }
}

/**
 * The chart on one sheet in this room, with cells whose shorter side is at least `least` mm or that
 * are as wide as wished; null when it does not fit.
 */
export function planOneSheet(
  work: Work,
  room: Room,
  column: Column,
  { wished, drawn, least }: SheetWishes & { readonly least: number },
): Tiling | null {
  const shorter = Math.min(1, cellRatio(work.pattern))
  const range = { least: least / shorter, most: cellSizes.most / shorter }
  const sizes = wished === null ? range : { least: wished, most: wished }
  const tiling = bestTiling(tiledChart(work, drawn), sizes, sizeAt(work, room, column, 0))
  const { room: cells } = sizeAt(work, room, column, 0)(tiling.cell.width)
  const fits = cells.width >= tiling.cell.width && cells.height >= tiling.cell.height
  return fits && tiling.sheets.length === 1 ? inChart(tiling, drawn) : null
}

/** The chart on as few sheets as it can be read on, all at the same scale. */
export function planSheets(
  work: Work,
  room: Room,
  column: Column,
  { wished, drawn }: SheetWishes,
): Tiling {
  const { type } = column
  const chart = tiledChart(work, drawn)
  const sizes = sizeAt(work, room, column, (markSpace * type.small) / type.chart)
  const shorter = Math.min(1, cellRatio(work.pattern))
  const range =
    wished === null
      ? { least: cellSizes.comfortable / shorter, most: cellSizes.most / shorter }
      : { least: wished, most: wished }
  return inChart(bestTiling(chart, range, sizes), drawn)
}
