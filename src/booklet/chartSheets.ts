import { flatGeometry, type FlatOptions } from '../drawing/flatGeometry'
import { cellRatio } from '../drawing/geometry'
import type { Work } from '../pattern/work'
import type { Column } from './blocks'
import { reaches } from './columns'
import { markSpace } from './marks'
import { cellSizes } from './typeScale'
import { bestTiling, type CellSize, type Room, type TiledChart, type Tiling } from './tiling'

// Where a chart's sheets are cut. All lengths here are those of the drawing; in large print it is
// scaled afterwards, so room and wishes are divided by that scale first.

const tiledChart = ({ pattern: { chart, style } }: Work): TiledChart => {
  const reach = reaches(chart)
  return {
    columns: chart.columns,
    rows: chart.rows.length,
    every: style.heavyEvery,
    reach: (column) => reach[column] ?? 0,
  }
}

/** Space that the numbers and marks round a chart's grid take at this cell width. */
function around(work: Work, options: FlatOptions): Room {
  const { width, height, left, right, top, bottom } = flatGeometry(work, options)
  return { width: width - (right - left), height: height - (bottom - top) }
}

function sizeAt(work: Work, room: Room, marks: number) {
  const ratio = cellRatio(work.pattern)
  return (width: number): { cell: CellSize; room: Room } => {
    const margins = around(work, { cell: width })
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
  { wished, least }: { readonly wished: number | null; readonly least: number },
): Tiling | null {
  const shorter = Math.min(1, cellRatio(work.pattern))
  const range = { least: least / shorter, most: cellSizes.most / shorter }
  const sizes = wished === null ? range : { least: wished, most: wished }
  const tiling = bestTiling(tiledChart(work), sizes, sizeAt(work, room, 0))
  const { room: cells } = sizeAt(work, room, 0)(tiling.cell.width)
  const fits = cells.width >= tiling.cell.width && cells.height >= tiling.cell.height
  return fits && tiling.sheets.length === 1 ? tiling : null
}

/** The chart on as few sheets as it can be read on, all at the same scale. */
export function planSheets(
  work: Work,
  room: Room,
  { type }: Column,
  wished: number | null,
): Tiling {
  const chart = tiledChart(work)
  const sizes = sizeAt(work, room, (markSpace * type.small) / type.chart)
  const shorter = Math.min(1, cellRatio(work.pattern))
  const range =
    wished === null
      ? { least: cellSizes.comfortable / shorter, most: cellSizes.most / shorter }
      : { least: wished, most: wished }
  return bestTiling(chart, range, sizes)
}
