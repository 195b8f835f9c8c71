import { runsRightToLeft } from '../../loom/direction'
import type { Stitch } from '../../stitches/stitch'
import { chartOn } from '../charts'
import { reverseCells } from '../edits/turn-over'
import type { Cell, Sheet } from '../pattern'
import { placed } from '../row'
import { grown, makePlain, replaceIn, tornBy, within, type Area, type At } from './area'

/** Stitches lifted out of a chart, as they look on the right side. Every stitch in it is whole. */
export interface Block {
  readonly columns: number
  /** Lowest row first; as many cells in each as there are columns, in the order of the pegs. */
  readonly rows: readonly (readonly Cell[])[]
  /** Did its pegs count from right to left, as the right side is seen? */
  readonly rightToLeft: boolean
}

/** Where the lowest row and the lowest column of a block lie. */
export interface Corner {
  readonly row: number
  readonly column: number
}

/** Cells in which every stitch is whole; ground where there was a part of one. */
export function wholeCells(cells: readonly Cell[], ground: Stitch): Cell[] {
  const whole = [...cells]
  for (const { stitch, column, columns } of placed({ cells })) {
    if (columns < stitch.width) whole.fill(ground, column, column + columns)
    else whole[column] = stitch
  }
  return whole
}

/** The block that stands in an area, with all of each cross that the area touches. */
export function blockIn(sheet: Sheet, area: Area): Block {
  const chart = chartOn(sheet)
  const { rows, columns } = grown(chart, within(area, chart))
  return {
    columns: columns.to - columns.from + 1,
    rows: chart.rows
      .slice(rows.from, rows.to + 1)
      .map(({ cells }) =>
        wholeCells(cells.slice(columns.from, columns.to + 1), sheet.style.background),
      ),
    rightToLeft: runsRightToLeft(sheet.loom.direction),
  }
}

/** The same look on a loom whose pegs count this way. */
export const facing = (block: Block, rightToLeft: boolean): Block =>
  block.rightToLeft === rightToLeft
    ? block
    : { ...block, rows: block.rows.map((cells) => reverseCells(cells)), rightToLeft }

/** The cells that a block would take, also beyond the chart. */
export const areaOf = ({ columns, rows }: Block, { row, column }: Corner): Area => ({
  rows: { from: row, to: row + rows.length - 1 },
  columns: { from: column, to: column + columns - 1 },
})

/** The corner nearest to this one at which the block lies on the chart, as far as there is room. */
export function insideAt(sheet: Sheet, { columns, rows }: Block, at: Corner): Corner {
  const chart = chartOn(sheet)
  const inside = (value: number, size: number, room: number) =>
    Math.max(0, Math.min(value, room - size))
  return {
    row: inside(at.row, rows.length, chart.rows.length),
    column: inside(at.column, columns, chart.columns),
  }
}

/**
 * Put a block into the chart. What reaches beyond the chart is left off, and of a cross that does so ground stays;
 * so does what is left of stitches under the block's edges.
 */
export function putBlock(sheet: Sheet, block: Block, at: Corner): Sheet {
  const { rows } = facing(block, runsRightToLeft(sheet.loom.direction))
  const ground = sheet.style.background
  return replaceIn(sheet, areaOf(block, at), (cells, row) => {
    const own = rows[row] ?? []
    const first = Math.max(0, -at.column)
    const part = own.slice(first, first + cells.length)
    return wholeCells(part, ground)
  })
}

/** What a block would cut in the chart. */
export const tornByBlock = (sheet: Sheet, block: Block, at: Corner): readonly At[] =>
  tornBy(chartOn(sheet), within(areaOf(block, at), chartOn(sheet)))

/** Take a block from an area, which gets plain, and put it elsewhere. */
export const moveBlock = (sheet: Sheet, area: Area, block: Block, at: Corner): Sheet =>
  putBlock(makePlain(sheet, area), block, at)

/** What a block that leaves this area would cut. */
export const tornByMove = (sheet: Sheet, area: Area, block: Block, at: Corner): readonly At[] =>
  tornByBlock(makePlain(sheet, area), block, at)
