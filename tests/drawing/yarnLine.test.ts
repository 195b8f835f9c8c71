import { expect, test } from 'vitest'
import { flatChart } from '../../src/drawing/flat'
import { setRun } from '../../src/pattern/edits/turning'
import { makeShortRows } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'

const empty = newPattern(24, 4)
const made = makeShortRows(empty.loom, usualHeel(empty.loom))
if (!made.ok) throw new Error(made.message)
const heel: Pattern = { ...empty, chart: { ...empty.chart, rows: made.rows } }

const yarnOf = (pattern: Pattern) =>
  flatChart(workPattern(pattern)).layers.find(({ key }) => key === 'yarn')?.items ?? []

test('a chart of whole rounds has no line of yarn', () => {
  expect(yarnOf(empty)).toEqual([])
})

test('the line goes through the first and last cell of every short row, an arrow for each', () => {
  const { geometry } = flatChart(workPattern(heel))
  const [line, heads] = yarnOf(heel)
  if (line?.kind !== 'path' || heads?.kind !== 'path') throw new Error('There is no line')
  const points = [...line.d.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) =>
    geometry.at(Number(x), Number(y)),
  )
  // All but the closing round, which covers all the pegs.
  const rows = workPattern(heel).run.rows.slice(0, -1)
  expect(points.map((hit) => hit && [hit.row, hit.peg])).toEqual(
    rows.flatMap(({ row, heading }, index) => {
      const ends = heading === 'forward' ? [row.from, row.to] : [row.to, row.from]
      return ends.map((peg) => [index, peg])
    }),
  )
  expect(heads.d.split('Z').length - 1).toBe(rows.length)
})

test('drawn from the last drawing it follows an edit of a short row', () => {
  const before = flatChart(workPattern(heel))
  const edited = setRun(heel, 2, { from: 3, to: 9 })
  const layer = (scene: typeof before) => scene.layers.find(({ key }) => key === 'yarn')
  expect(layer(flatChart(workPattern(edited), {}, before))).toEqual(
    layer(flatChart(workPattern(edited))),
  )
})
