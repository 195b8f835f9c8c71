import { bisector } from 'd3-array'
import { loomRow, sitesByPeg, type LoomRow, type Site } from '../loom/row'
import type { RowRun } from '../loom/work'
import { cutStitch } from '../stitches/cut'
import type { Stitch } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { edgeOf, whyCut, type Placed } from './columns/cut'
import type { Layout } from './layout'
import type { Cell, Row, Run } from './pattern'

export type { Placed } from './columns/cut'

const itemsByColumn = bisector(({ column }: Placed) => column)

const placedOf = new WeakMap<readonly Cell[], readonly Placed[]>()

/**
 * The stitches of a row in rising column order. A cell that continues no stitch is read as a
 * stitch cut off its start: it is given to a plain knit.
 */
export function placed({ cells }: Pick<Row, 'cells'>): readonly Placed[] {
  let list = placedOf.get(cells)
  if (!list) {
    const read: Placed[] = []
    readCells(cells, 0, cells.length, read)
    placedOf.set(cells, (list = read))
  }
  return list
}

/** Read the stitches that begin in columns `from`..`to` (not included); gives the column after. */
function readCells(cells: readonly Cell[], from: number, to: number, into: Placed[]): number {
  let column = from
  while (column < to) {
    const stitch = cells[column] ?? standardVocabulary.withRole('knit')
    let columns = 1
    while (columns < stitch.width && cells[column + columns] === null) columns++
    into.push({ stitch, column, columns })
    column += columns
  }
  return column
}

/**
 * Read a row from its earlier version, with the same result as afresh. Gives the columns
 * `from`..`to` (not included) outside of which the stitches are the same, at the same places.
 */
function readAgain({ cells }: Row, earlier: Row): Run {
  const old = earlier.cells
  const were = placed(earlier)
  const count = cells.length
  let first = 0
  while (first < count && cells[first] === old[first]) first++
  let last = count - 1
  while (last > first && cells[last] === old[last]) last--
  // A stitch that cannot reach the first change cannot have grown or been cut.
  let head = itemsByColumn.left(were, first - standardVocabulary.widest + 1)
  for (let item = were[head]; item && item.column + item.stitch.width <= first; item = were[head])
    head++
  const from = were[head]?.column ?? count
  const middle: Placed[] = []
  let to = from
  let tail = head
  while (to < count && !(to > last && were[tail]?.column === to)) {
    to = readCells(cells, to, to + 1, middle)
    while ((were[tail]?.column ?? count) < to) tail++
  }
  if (!placedOf.has(cells)) placedOf.set(cells, were.toSpliced(head, tail - head, ...middle))
  return { from, to }
}

/** The stitch that covers a column. */
export function placedAt(row: Row, column: number): Placed | undefined {
  return placed(row).find((item) => column >= item.column && column < item.column + item.columns)
}

export interface PatternRow extends LoomRow<Stitch> {
  /** Does it say which pegs it covers? A row that does not goes over all of them, as far as its chart reaches. */
  readonly isPart: boolean
}
export type PatternRun = RowRun<PatternRow>

const laid = new WeakMap<Row, { readonly layout: Layout; readonly row: PatternRow }>()

/**
 * Lay a row on the pegs. Of stitches that have not all their columns on neighbouring pegs (cut, over
 * the edge of a repeat, of the run or of the loom) pieces are laid, each as one site: they are
 * worked as plain knit, and every reading says what they are pieces of (`cutStitch`).
 * With an earlier version of the row only what differs from it is read and laid.
 */
export function onPegs(row: Row, layout: Layout, earlier?: Row): PatternRow {
  const last = laid.get(row)
  if (last?.layout === layout) return last.row
  const was = earlier && laid.get(earlier)
  const made =
    (was?.layout === layout && earlier && layAgain(row, earlier, was.row, layout)) ||
    layAfresh(row, layout)
  laid.set(row, { layout, row: made })
  return made
}

/** First and last peg of a row on these pegs. */
const pegsOf = ({ run }: Row, { columnOf }: Layout): Run => ({
  from: Math.max(0, run?.from ?? 0),
  to: Math.min(columnOf.length - 1, run?.to ?? columnOf.length - 1),
})

function layAfresh(row: Row, layout: Layout): PatternRow {
  const { from, to } = pegsOf(row, layout)
  const sites = laySites(row, from, to + 1, to, layout)
  return { ...loomRow(sites, from, to, row.heading, row.end), isPart: row.run !== null }
}

/** No column is left out or comes again. */
const columnsArePegs = ({ columnOf }: Layout): boolean =>
  columnOf[columnOf.length - 1] === columnOf.length - 1

/** null where the row has to be laid afresh. */
function layAgain(row: Row, earlier: Row, was: PatternRow, layout: Layout): PatternRow | null {
  // What a run cuts is told by it, though it may reach beyond the same pegs.
  if (row.run?.from !== earlier.run?.from || row.run?.to !== earlier.run?.to) return null
  const { from, to } = pegsOf(row, layout)
  if (from !== was.from || to !== was.to || !was.steady || !columnsArePegs(layout)) return null
  if (row.cells.length !== earlier.cells.length) return null
  const changed = readAgain(row, earlier)
  const first = Math.max(from, changed.from)
  const end = Math.min(to + 1, Math.max(first, changed.to))
  const middle = laySites(row, first, end, to, layout)
  const { steady } = loomRow(middle, first, end - 1, null, 'on')
  if (!steady) return null
  const head = sitesByPeg.left(was.sites, first)
  const tail = sitesByPeg.left(was.sites, end)
  const sites = was.sites.toSpliced(head, tail - head, ...middle)
  // Steady rows take and make as many loops as they have pegs, so the sums are the same too.
  return { ...was, sites, heading: row.heading, end: row.end }
}

/** The stitches that begin on pegs `from`..`end` (not included) of a row that ends on `lastPeg`. */
function laySites(
  row: Row,
  from: number,
  end: number,
  lastPeg: number,
  layout: Layout,
): Site<Stitch>[] {
  const { columnOf } = layout
  const items = placed(row)
  const plain = standardVocabulary.withRole('knit')
  const sites: Site<Stitch>[] = []
  let next = itemsByColumn.left(items, columnOf[from] ?? 0)
  // The first column may continue a stitch that begins before it.
  if ((items[next]?.column ?? Infinity) > (columnOf[from] ?? 0)) next = Math.max(0, next - 1)
  for (let peg = from; peg < end;) {
    const column = columnOf[peg] as number
    // Stitches rise with the pegs, but for where a copy of the repeat begins again.
    if ((items[next]?.column ?? Infinity) > column) next = 0
    while (next < items.length && endOf(items[next] as Placed) <= column) next++
    const item = items[next]
    const stitch = !item
      ? plain
      : isWhole(item, peg, lastPeg, columnOf)
        ? item.stitch
        : pieceOf(item, peg, lastPeg, row, layout)
    sites.push({ stitch, peg })
    peg += stitch.width
  }
  return sites
}

const endOf = ({ column, columns }: Placed): number => column + columns

/** What there is of a stitch from a peg on. */
function pieceOf(item: Placed, peg: number, lastPeg: number, row: Row, layout: Layout): Stitch {
  const { columnOf } = layout
  const column = columnOf[peg] as number
  let columns = 1
  while (
    peg + columns <= lastPeg &&
    column + columns < endOf(item) &&
    columnOf[peg + columns] === column + columns
  )
    columns++
  return cutStitch(item.stitch, columns, whyCut(item, row, layout) ?? edgeOf(layout))
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
