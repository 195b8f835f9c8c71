import { chartOn } from '../charts'
import type { Sheet, Run, Cell } from '../pattern'
import { limits } from '../pattern'
import { withCells, withChart } from './chart'
import type { Stitch } from '../../stitches/stitch'

/** Where column `at` stands after `count` columns came in before `before`. */
const runAfterInsert = (run: Run | null, before: number, count: number): Run | null =>
  run && {
    from: run.from >= before ? run.from + count : run.from,
    to: run.to >= before ? run.to + count : run.to,
  }

/** Insert background columns before column `at` (0-based). A stitch they would split is cut there. */
export function insertColumns(pattern: Sheet, at: number, count = 1): Sheet {
  const { columns, repeat, rows } = chartOn(pattern)
  const added = Math.min(count, limits.columns.most - columns)
  if (added <= 0) return pattern
  const blank = Array.from({ length: added }, () => pattern.style.background)
  return withChart(pattern, {
    columns: columns + added,
    repeat: runAfterInsert(repeat, at, added),
    rows: withCells(rows, (cells) =>
      mendOrphans(cells.toSpliced(at, 0, ...blank), pattern.style.background),
    ),
  })
}

/** Delete columns `from`..`to`; one always stays. A stitch that loses columns is cut, not dropped. */
export function deleteColumns(pattern: Sheet, from: number, to: number): Sheet {
  const { columns, repeat, rows } = chartOn(pattern)
  const count = to - from + 1
  if (count <= 0 || count >= columns) return pattern
  const before = (column: number) => column - Math.max(0, Math.min(column, to + 1) - from)
  const left = repeat && { from: before(repeat.from), to: before(repeat.to + 1) - 1 }
  return withChart(pattern, {
    columns: columns - count,
    repeat: left && left.to >= left.from ? left : null,
    rows: withCells(rows, (cells) =>
      mendOrphans(cells.toSpliced(from, count), pattern.style.background),
    ),
  })
}

/** Take away all columns but `from`..`to`. */
export const keepColumns = (pattern: Sheet, from: number, to: number): Sheet =>
  deleteColumns(deleteColumns(pattern, to + 1, chartOn(pattern).columns - 1), 0, from - 1)

/** A cell that goes on with a stitch whose start is gone becomes background. */
export function mendOrphans(cells: readonly Cell[], background: Stitch): Cell[] {
  let covered = false
  return cells.map((cell) => {
    if (cell !== null) {
      covered = true
      return cell
    }
    return covered ? cell : background
  })
}

export const setRepeat = (pattern: Sheet, repeat: Run | null): Sheet =>
  withChart(pattern, { repeat })

/** Add background columns at the end, or take columns off there, until there are `columns`. */
export function setColumns(pattern: Sheet, columns: number): Sheet {
  const now = chartOn(pattern).columns
  if (columns > now) return insertColumns(pattern, now, columns - now)
  if (columns < now) return deleteColumns(pattern, columns, now - 1)
  return pattern
}
