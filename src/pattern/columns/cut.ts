import type { CutBy, Stitch } from '../../stitches/stitch'
import type { Layout } from '../layout'
import type { Row, Run } from '../pattern'

/** One stitch as it stands in a row's cells. */
export interface Placed {
  readonly stitch: Stitch
  readonly column: number
  /** Columns it really has; fewer than its width when it is cut by a neighbour or the edge. */
  readonly columns: number
}

/** Why a stitch of several columns does not stand whole on its pegs; null: it does. */
export function whyCut(
  item: Placed,
  { cells, run }: Pick<Row, 'cells' | 'run'>,
  layout: Layout,
): CutBy | null {
  const { column, columns, stitch } = item
  const end = column + columns
  const reach = column + stitch.width - 1
  const repeat = repeatOf(layout)
  const last = cells.length - 1
  // What stands right behind the repeat's edge does not lie over the stitch: the edge cut it.
  const endsWithRepeat = repeat !== null && repeat.from <= column && end === repeat.to + 1
  if (columns < stitch.width && end < cells.length && !endsWithRepeat) return 'overlap'
  if (repeat) {
    if (column < repeat.from && reach >= repeat.from) return 'repeat'
    const over = column >= repeat.from && column <= repeat.to && reach > repeat.to
    if (over && (repeat.to < last || layout.copies > 1)) return 'repeat'
  }
  if (reach > last) return edgeOf(layout)
  return run && isCutByRun(item, run, layout) ? 'run edge' : null
}

/** What cuts a stitch at the end of all pegs. */
export const edgeOf = ({ shape }: Layout): CutBy => (shape === 'ring' ? 'join' : 'bar edge')

/** The repeat's columns. */
function repeatOf({ copyRuns, columnOf }: Layout): Run | null {
  const first = copyRuns[0]
  return first ? { from: columnOf[first.from] ?? 0, to: columnOf[first.to] ?? 0 } : null
}

/** Where a run ends with the loom it is the loom that cuts, however the run's end is written. */
function isCutByRun({ column, stitch }: Placed, run: Run, { columnOf }: Layout): boolean {
  const endsOnLoom = run.to < columnOf.length - 1
  for (let peg = run.from - stitch.width + 1; peg <= run.to; peg++) {
    if (columnOf[peg] !== column) continue
    if (peg < run.from || (endsOnLoom && peg + stitch.width - 1 > run.to)) return true
  }
  return false
}
