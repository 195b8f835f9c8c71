import { expect, test } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { chartsInOrder, onChart } from '../../src/pattern/charts'
import { workPattern } from '../../src/pattern/work'
import { workOnce, workPieceOnce } from '../../src/pattern/workOnce'
import { workPiece, type PieceWork } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { stitchOf } from '../../src/stitches/vocabulary'

const rowsOf = ({ steps }: PieceWork) =>
  steps.map(({ rows, edge, after }) => [rows?.rows, edge, after])

const starters = starterCharts.map(({ id, pattern }) => [id, pattern()] as const)

test.each(starters)('%s: nothing is worked again for the same charts and steps', (_, pattern) => {
  const piece = workPieceOnce(pattern)
  expect(piece).toEqual(workPiece(pattern))
  expect(workPieceOnce(pattern)).toBe(piece)
  const renamed = workPieceOnce({ ...pattern, title: 'Another' })
  renamed.steps.forEach((step, index) => expect(step.rows).toBe(piece.steps[index]?.rows))
  for (const { name } of chartsInOrder(pattern)) {
    const first = workOnce(onChart(pattern, name)).run.rows
    const again = workOnce(onChart({ ...pattern, title: 'Another' }, name)).run.rows
    again.forEach((row, index) => expect(row).toBe(first[index]))
  }
})

test.each(starters)(
  '%s: what hangs on the loom or an edit is worked as it is now',
  (_, pattern) => {
    workPieceOnce(pattern)
    workOnce(pattern)
    const { loom, making } = pattern
    const versions = [
      paint(pattern, stitchOf('p'), 0, 0),
      { ...pattern, loom: { ...loom, pegs: loom.pegs - 2 } },
      { ...pattern, making: { ...making, knit: 'flat' as const } },
    ]
    for (const version of versions) {
      expect(workOnce(version).run.rows).toEqual(workPattern(version).run.rows)
      expect(rowsOf(workPieceOnce(version))).toEqual(rowsOf(workPiece(version)))
    }
  },
)
