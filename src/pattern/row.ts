import { loomRow, type LoomRow, type Site } from '../loom/row'
import type { Stitch } from '../stitches/stitch'
import { stitchOf } from '../stitches/vocabulary'
import type { Layout } from './layout'
import type { Row } from './pattern'

/** One stitch as it stands in a row's cells. */
export interface Placed {
  readonly stitch: Stitch
  readonly column: number
  /** Columns it really has; fewer than its width when it is cut by a neighbour or the edge. */
  readonly columns: number
}

const placedOf = new WeakMap<readonly string[], readonly Placed[]>()

/**
 * The stitches of a row in rising column order. A cell that continues no stitch is read as a
 * stitch cut off its start: it is given to a plain knit.
 */
export function placed(row: Row): readonly Placed[] {
  let list = placedOf.get(row.cells)
  if (!list) placedOf.set(row.cells, (list = readCells(row.cells)))
  return list
}

function readCells(cells: readonly string[]): Placed[] {
  const list: Placed[] = []
  for (let column = 0; column < cells.length;) {
    const stitch = stitchOf(cells[column] || 'k')
    let columns = 1
    while (columns < stitch.width && cells[column + columns] === '') columns++
    list.push({ stitch, column, columns })
    column += columns
  }
  return list
}

/** The stitch that covers a column. */
export function placedAt(row: Row, column: number): Placed | undefined {
  return placed(row).find((item) => column >= item.column && column < item.column + item.columns)
}

export type PatternRow = LoomRow<Stitch>

const laid = new WeakMap<Row, { readonly layout: Layout; readonly row: PatternRow }>()

/**
 * Lay a row on the pegs. Stitches that have not all their columns on neighbouring pegs (cut, over
 * the edge of a repeat, of the run or of the loom) are worked as plain knit there; checks say so.
 */
export function onPegs(row: Row, layout: Layout): PatternRow {
  const last = laid.get(row)
  if (last?.layout === layout) return last.row
  const made = layRow(row, layout)
  laid.set(row, { layout, row: made })
  return made
}

function layRow(row: Row, { columnOf }: Layout): PatternRow {
  const from = Math.max(0, row.run?.from ?? 0)
  const to = Math.min(columnOf.length - 1, row.run?.to ?? columnOf.length - 1)
  const startsAt = new Array<Placed | undefined>(row.cells.length)
  for (const item of placed(row)) startsAt[item.column] = item
  const plain = stitchOf('k')
  const sites: Site<Stitch>[] = []
  for (let peg = from; peg <= to;) {
    const column = columnOf[peg] as number
    const item = startsAt[column]
    const stitch = item && isWhole(item, peg, to, columnOf) ? item.stitch : plain
    sites.push({ stitch, peg })
    peg += stitch.width
  }
  return loomRow(sites, from, to, row.heading, row.end)
}

/** Does the stitch stand whole on pegs `peg`..? */
export function isWhole(
  { stitch, column, columns }: Placed,
  peg: number,
  lastPeg: number,
  columnOf: readonly number[],
): boolean {
  if (columns < stitch.width || peg + stitch.width - 1 > lastPeg) return false
  return columnOf[peg + stitch.width - 1] === column + stitch.width - 1 && columnOf[peg] === column
}
