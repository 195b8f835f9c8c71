import fc from 'fast-check'
import { expect, it } from 'vitest'
import { onPegs, placed } from '../../src/pattern/row'
import { layOut } from '../../src/pattern/layout'
import { noRow, type Row } from '../../src/pattern/pattern'
import { vocabulary } from '../../src/stitches/vocabulary'
import { arbitraryCells, arbitraryCutCells, arbitraryRun } from '../arbitraries'

const columns = 20
const steady = vocabulary.filter(({ takes, makes, width }) => takes === width && makes === width)
const cells = fc.oneof(
  arbitraryCells(columns, steady),
  arbitraryCells(columns),
  arbitraryCutCells(columns),
)

/** Some neighbouring cells of one row put into another at the same columns. */
const change = fc.tuple(cells, arbitraryRun(columns))
const withChange = (row: Row, [other, { from, to }]: [string[], { from: number; to: number }]) => ({
  ...row,
  cells: row.cells.map((cell, column) =>
    column >= from && column <= to ? (other[column] ?? cell) : cell,
  ),
})

it('reads and lays a row from its earlier version as from nothing', () => {
  fc.assert(
    fc.property(
      cells,
      fc.array(change, { minLength: 1, maxLength: 6 }),
      fc.option(arbitraryRun(columns)),
      fc.option(arbitraryRun(columns)),
      fc.integer({ min: 12, max: 30 }),
      (first, changes, run, repeat, pegs) => {
        const layout = layOut({ columns, repeat }, pegs)
        let row: Row = { ...noRow(columns, 'k'), cells: first, run }
        onPegs(row, layout)
        for (const one of changes) {
          const next = withChange(row, one)
          const fresh = structuredClone(next)
          expect(onPegs(next, layout, row)).toEqual(onPegs(fresh, layout))
          expect(placed(next)).toEqual(placed(fresh))
          row = next
        }
      },
    ),
    { numRuns: 1000 },
  )
})

it('keeps the stitches that a change does not touch', () => {
  const layout = layOut({ columns, repeat: null }, columns)
  const row = noRow(columns, 'k')
  const before = onPegs(row, layout)
  const after = onPegs({ ...row, cells: row.cells.with(7, 'p') }, layout, row)
  const changed = after.sites.flatMap((site, i) => (site === before.sites[i] ? [] : [site.peg]))
  expect(changed).toEqual([7])
})

it('lays what is cut anew when the row gets a run of the same pegs', () => {
  // The loom has two pegs fewer than the chart has columns.
  const layout = layOut({ columns, repeat: null }, columns - 2)
  const cells = noRow(columns, 'k').cells.toSpliced(columns - 4, 4, '2/2 LC', '', '', '')
  const whole: Row = { ...noRow(columns, 'k'), cells }
  const part: Row = { ...whole, run: { from: 0, to: columns - 2 } }
  onPegs(whole, layout)
  expect(onPegs(part, layout, whole)).toEqual(onPegs(structuredClone(part), layout))
})
