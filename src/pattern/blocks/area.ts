import type { Stitch } from '../../stitches/stitch'
import { withChart } from '../edits/chart'
import { chartOn } from '../charts'
import type { Cell, Chart, Run, Sheet } from '../pattern'
import { placed, type Placed } from '../row'

/** A rectangle of cells: rows and columns of a chart, 0-based. */
export interface Area {
  readonly rows: Run
  readonly columns: Run
}

/** A stitch and where it stands. */
export interface At extends Placed {
  /** Chart row, 0-based. */
  readonly row: number
}

/** All of a chart. */
export const allOf = ({ columns, rows }: Chart): Area => ({
  rows: { from: 0, to: rows.length - 1 },
  columns: { from: 0, to: columns - 1 },
})

/** The part of an area that lies on a chart. */
export const within = (area: Area, chart: Chart): Area => ({
  rows: { from: Math.max(0, area.rows.from), to: Math.min(chart.rows.length - 1, area.rows.to) },
  columns: {
    from: Math.max(0, area.columns.from),
    to: Math.min(chart.columns - 1, area.columns.to),
  },
})

const touches = ({ column, columns }: Placed, { from, to }: Run): boolean =>
  column <= to && column + columns > from

const isInside = ({ column, columns }: Placed, { from, to }: Run): boolean =>
  column >= from && column + columns - 1 <= to

/** The stitches of these rows, each with its row. */
export const stitchesIn = ({ rows }: Chart, run: Run): At[] =>
  rows
    .slice(run.from, run.to + 1)
    .flatMap((row, index) => placed(row).map((item) => ({ ...item, row: run.from + index })))

/** Where in an area a stitch stands whole. */
export const placesOf = (chart: Chart, stitch: Stitch, { rows, columns }: Area): At[] =>
  stitchesIn(chart, rows).filter((item) => item.stitch === stitch && isInside(item, columns))

/** The area with all of each stitch that it touches. */
export function grown(chart: Chart, area: Area): Area {
  let { from, to } = area.columns
  const items = stitchesIn(chart, area.rows).filter(({ columns }) => columns > 1)
  for (let grows = true; grows;) {
    grows = false
    for (const item of items) {
      if (!touches(item, { from, to }) || isInside(item, { from, to })) continue
      from = Math.min(from, item.column)
      to = Math.max(to, item.column + item.columns - 1)
      grows = true
    }
  }
  return from === area.columns.from && to === area.columns.to
    ? area
    : { rows: area.rows, columns: { from, to } }
}

/** The stitches that an edge of the area goes through. */
export const tornBy = (chart: Chart, { rows, columns }: Area): readonly At[] =>
  stitchesIn(chart, rows).filter((item) => touches(item, columns) && !isInside(item, columns))

/** Cells with the ground stitch in place of the stitches that an edge of these columns goes through. */
export function clearOfEdges(cells: readonly Cell[], columns: Run, ground: Stitch): Cell[] {
  const cleared = [...cells]
  for (const item of placed({ cells }))
    if (touches(item, columns) && !isInside(item, columns))
      cleared.fill(ground, item.column, item.column + item.columns)
  return cleared
}

/**
 * Other cells in an area. `make` is given the cells of one row in it, and its number in the area, and gives as many.
 * What is left of stitches that the area's edges go through becomes ground. Rows that stay alike stay the same.
 */
export function replaceIn(
  sheet: Sheet,
  area: Area,
  make: (cells: readonly Cell[], row: number) => readonly Cell[],
): Sheet {
  const chart = chartOn(sheet)
  const { rows, columns } = within(area, chart)
  let changed = false
  const made = chart.rows.map((row, index) => {
    if (index < rows.from || index > rows.to || columns.from > columns.to) return row
    const there = clearOfEdges(row.cells, columns, sheet.style.background)
    const inside = make(there.slice(columns.from, columns.to + 1), index - area.rows.from)
    const cells = there.toSpliced(columns.from, inside.length, ...inside)
    if (cells.every((cell, column) => cell === row.cells[column])) return row
    changed = true
    return { ...row, cells }
  })
  return changed ? withChart(sheet, { rows: made }) : sheet
}

/** All stitches of an area back to the ground stitch. */
export const makePlain = (sheet: Sheet, area: Area): Sheet =>
  replaceIn(sheet, area, (cells) => cells.map(() => sheet.style.background))
