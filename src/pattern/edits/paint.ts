import { chartOn } from '../charts'
import type { Stitch } from '../../stitches/stitch'
import { layoutOf } from '../layout'
import type { Sheet, Run } from '../pattern'
import { placed } from '../row'
import { withRow } from './chart'
import { termOf } from '../../languages/languages'

/** Where a stitch would land, or why it cannot. */
export type Landing =
  | { readonly can: true; readonly columns: Run; readonly replaces: readonly Stitch[] }
  | { readonly can: false; readonly columns: Run; readonly reason: string }

/**
 * A stitch lands whole, from `column` on in peg order. Stitches it touches are taken away whole;
 * what is left of them becomes background.
 */
export function landing(pattern: Sheet, stitch: Stitch, rowIndex: number, column: number): Landing {
  const row = chartOn(pattern).rows[rowIndex]
  const columns = {
    from: column,
    to: Math.min(chartOn(pattern).columns, column + stitch.width) - 1,
  }
  const no = (reason: string): Landing => ({ can: false, columns, reason })
  if (!row || column < 0 || column >= chartOn(pattern).columns)
    return no(`There is no peg ${column + 1} in row ${rowIndex + 1} of the chart.`)
  const room = chartOn(pattern).columns - column
  if (room < stitch.width) {
    const { repeat } = chartOn(pattern)
    const edge =
      repeat?.to === chartOn(pattern).columns - 1
        ? 'the edge of the repeat'
        : pattern.loom.shape === 'ring'
          ? 'the end of the round'
          : 'the edge of the piece'
    return no(
      `${termOf(stitch, pattern.style.terms).abbr} needs ${stitch.width} pegs; only ${room} ${room === 1 ? 'is' : 'are'} left before ${edge}.`,
    )
  }
  if (row.run) {
    const { from, to } = row.run
    const pegs = layoutOf(pattern).columnOf
    const inside = pegs.some(
      (c, peg) => c === column && peg >= from && peg + stitch.width - 1 <= to,
    )
    if (!inside) return no(`Row ${rowIndex + 1} works only pegs ${from + 1} to ${to + 1}.`)
  }
  const replaces = placed(row)
    .filter((item) => item.column <= columns.to && item.column + item.columns > column)
    .filter((item) => item.stitch.width > 1 || item.stitch !== pattern.style.background)
    .map((item) => item.stitch)
  return { can: true, columns, replaces }
}

/** Put a stitch into a row. Where it cannot land the pattern stays as it is. */
export function paint(pattern: Sheet, stitch: Stitch, rowIndex: number, column: number): Sheet {
  const row = chartOn(pattern).rows[rowIndex]
  if (!row || !landing(pattern, stitch, rowIndex, column).can) return pattern
  const { width } = stitch
  const cells = [...row.cells]
  for (const item of placed(row))
    if (item.column < column + width && item.column + item.columns > column)
      cells.fill(pattern.style.background, item.column, item.column + item.columns)
  cells.fill(null, column, column + width)
  cells[column] = stitch
  if (cells.every((cell, i) => cell === row.cells[i])) return pattern
  return withRow(pattern, rowIndex, { cells })
}

/**
 * Put a stitch into rows `rows` of columns `columns`, side by side from the first column on; where it cannot
 * land, or would reach out of the columns, what is there stays.
 */
export function paintAll(pattern: Sheet, stitch: Stitch, rows: Run, columns: Run): Sheet {
  const { width } = stitch
  let painted = pattern
  for (let row = rows.from; row <= rows.to; row++)
    for (let column = columns.from; column + width - 1 <= columns.to; column += width)
      painted = paint(painted, stitch, row, column)
  return painted
}

/** All of them back to the background stitch. */
export function eraseAll(pattern: Sheet, rows: Run, columns: Run): Sheet {
  let erased = pattern
  for (let row = rows.from; row <= rows.to; row++)
    for (let column = columns.from; column <= columns.to; column++)
      erased = erase(erased, row, column)
  return erased
}

/** Back to the background stitch; a stitch of several columns goes whole. */
export const erase = (pattern: Sheet, rowIndex: number, column: number): Sheet => {
  const row = chartOn(pattern).rows[rowIndex]
  const item =
    row && placed(row).find((at) => column >= at.column && column < at.column + at.columns)
  if (!row || !item) return pattern
  if (item.columns === 1 && item.stitch === pattern.style.background) return pattern
  const cells = [...row.cells]
  cells.fill(pattern.style.background, item.column, item.column + item.columns)
  return withRow(pattern, rowIndex, { cells })
}
