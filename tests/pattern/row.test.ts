import fc from 'fast-check'
import { expect, it } from 'vitest'
import { onPegs, placed } from '../../src/pattern/row'
import { layOut } from '../../src/pattern/layout'
import { blankRow, type Row, type Run, type Cell } from '../../src/pattern/pattern'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { arbitraryCells, arbitraryCutCells, arbitraryRun, cellsOf } from '../arbitraries'
import { cellsFrom } from '../cells'

const columns = 20
const cross = cellsFrom(cellsOf(stitchOf('2/2 LC')))
const steady = standardVocabulary.stitches.filter(
  ({ takes, makes, width }) => takes === width && makes === width,
)
const cells = fc
  .oneof(arbitraryCells(columns, steady), arbitraryCells(columns), arbitraryCutCells(columns))
  .map(cellsFrom)

/** The same row, of which nothing is remembered. */
const afresh = <R extends Row>(row: R): R => ({ ...row, cells: [...row.cells] })

/** A run that may be written beyond the loom. */
const run = fc.option(arbitraryRun(40))

/** Some neighbouring cells of one row put into another at the same columns, on any pegs. */
const change = fc.tuple(cells, arbitraryRun(columns), fc.option(run, { nil: undefined }))
const withChange = (
  row: Row,
  [other, { from, to }, pegs]: [Cell[], Run, Run | null | undefined],
): Row => ({
  ...row,
  run: pegs === undefined ? row.run : pegs,
  cells: row.cells.map((cell, column) =>
    column >= from && column <= to ? (other[column] ?? null) : cell,
  ),
})

it('reads and lays a row from its earlier version as from nothing', () => {
  fc.assert(
    fc.property(
      cells,
      fc.array(change, { minLength: 1, maxLength: 6 }),
      run,
      fc.option(arbitraryRun(columns)),
      fc.integer({ min: 12, max: 30 }),
      (first, changes, pegsOfRow, repeat, pegs) => {
        const layout = layOut({ columns, repeat }, pegs)
        let row: Row = { ...blankRow(columns, stitchOf('k')), cells: first, run: pegsOfRow }
        onPegs(row, layout)
        for (const one of changes) {
          const next = withChange(row, one)
          const fresh = afresh(next)
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
  const row = blankRow(columns, stitchOf('k'))
  const before = onPegs(row, layout)
  const after = onPegs({ ...row, cells: row.cells.with(7, stitchOf('p')) }, layout, row)
  const changed = after.sites.flatMap((site, i) => (site === before.sites[i] ? [] : [site.peg]))
  expect(changed).toEqual([7])
})

it('lays what is cut anew when the row gets a run of the same pegs', () => {
  // The loom has two pegs fewer than the chart has columns.
  const layout = layOut({ columns, repeat: null }, columns - 2)
  const cells = blankRow(columns, stitchOf('k')).cells.toSpliced(columns - 4, 4, ...cross)
  const whole: Row = { ...blankRow(columns, stitchOf('k')), cells }
  const part: Row = { ...whole, run: { from: 0, to: columns - 2 } }
  onPegs(whole, layout)
  expect(onPegs(part, layout, whole)).toEqual(onPegs(afresh(part), layout))
})

it('says the same of a cut stitch, whether its run ends with the loom or is written beyond it', () => {
  // A chart wider than its loom: the last cross has two of its four pegs.
  const row = {
    ...blankRow(12, stitchOf('k')),
    cells: [...cellsFrom(['k', 'k', 'k', 'k']), ...cross, ...cross],
  }
  const layout = layOut({ columns: 12, repeat: null }, 10, 'bar')
  const runs = [99, 10, 9].map((to) => ({ ...row, run: { from: 4, to } }))
  for (const earlier of runs)
    for (const next of runs) {
      onPegs(earlier, layout)
      const again = onPegs(afresh(next), layout, earlier)
      expect(again).toEqual(onPegs(afresh(next), layout))
      expect(again.sites.at(-1)?.stitch.cut?.by).toBe('bar edge')
    }
  const short = onPegs({ ...row, run: { from: 4, to: 8 } }, layout)
  expect(short.sites.at(-1)?.stitch.cut?.by).toBe('run edge')
})
