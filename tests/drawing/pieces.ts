import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import type { Direction } from '../../src/loom/direction'
import type { RowEnd } from '../../src/loom/row'
import { newPattern, type Pattern, type Row, type Run } from '../../src/pattern/pattern'
import { stitchOf } from '../../src/stitches/vocabulary'
import { cellsFrom } from '../cells'

/** Cells from stitch ids, each in as many columns as it has. */
export const cells = (ids: readonly string[]): string[] =>
  ids.flatMap((id) => [id, ...Array.from({ length: stitchOf(id).width - 1 }, () => '')])

export const row = (ids: readonly string[], run: Run | null = null, end: RowEnd = 'on'): Row => ({
  cells: cellsFrom(cells(ids)),
  run,
  heading: null,
  end,
})

/** A wrist cuff, invented for this: a rib with a cross in it, eleven columns three times round. */
export function ribCuff(direction: Direction = 'clockwise'): Pattern {
  const rib = row(['p', 'k', 'k', 'k', 'k', 'p', 'k', 'p', 'p', 'k', 'p'])
  const pattern = newPattern(33, 1)
  return withChart(
    {
      ...pattern,
      title: 'Millrace cuff',
      gauge: { stitches: 22, rows: 28 },
      loom: { ...pattern.loom, direction },
    },
    {
      columns: 11,
      repeat: { from: 0, to: 10 },
      bands: [{ from: 1, to: 4, times: 3 }],
      rows: [
        rib,
        rib,
        row(['p', '2/2 LC', 'p', 'k', 'p', 'p', 'k', 'p']),
        rib,
        row(['p', 'k', 'k', 'k', 'k', 'p', 'sl', 'p', '2/1 RPC']),
        row(['p', '1/1 RC', '1/1 LPC', 'p', 'ew', 'p', 'yo', 'k2tog', 'p']),
        row(['p', 'ssk', 'yo', 'k', 'mb', 'p', 'fk', 'none', 'none', 'slf', 'p']),
        rib,
      ],
    },
  )
}

/** The beginning of a heel on 16 pegs, with both kinds of turns. */
export function turnedHeel(direction: Direction = 'clockwise'): Pattern {
  const pattern = newPattern(16, 1)
  const plain = Array.from({ length: 16 }, () => 'k')
  const turned = (from: number, to: number, end: RowEnd) => row(plain, { from, to }, end)
  return withChart(
    {
      ...pattern,
      title: 'Heel in short rows',
      gauge: { stitches: 20, rows: 28 },
      loom: { ...pattern.loom, direction },
    },
    {
      columns: 16,
      repeat: null,
      bands: [],
      rows: [
        row(plain),
        turned(0, 11, 'German turn'),
        turned(1, 10, 'German turn'),
        turned(2, 10, 'German turn'),
        turned(3, 9, 'wrap'),
        turned(4, 9, 'wrap'),
        turned(4, 8, 'wrap'),
        turned(5, 8, 'on'),
      ],
    },
  )
}

export const withDirection = (pattern: Pattern, direction: Direction): Pattern => ({
  ...pattern,
  loom: { ...pattern.loom, direction },
})

/** One row of the chart with another stitch in one column. */
export function withCell(pattern: Pattern, row: number, column: number, stitch: string): Pattern {
  const rows = chartOn(pattern).rows.map((old, index) =>
    index === row ? { ...old, cells: old.cells.with(column, stitchOf(stitch)) } : old,
  )
  return withChart(pattern, { rows })
}
