/** What the mends of crosses leave beside them: every loop keeps the look it had. */
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import { checkAfresh } from '../../src/checks/check'
import { directions, type Direction } from '../../src/loom/direction'
import { newPattern, type Band, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { standardVocabulary } from '../../src/stitches/vocabulary'
import type { Cross, Stitch } from '../../src/stitches/stitch'
import { cellsFrom, idsIn } from '../cells'

const crosses = standardVocabulary.stitches.filter(
  (stitch): stitch is Stitch & { cross: Cross } => !!stitch.cross,
)

const cellsOf = ({ id, width }: Stitch): string[] => [id, ...new Array<string>(width - 1).fill('')]

/** Pegs beside the cross: purl, and one twisted. */
const rowWith = (cells: readonly string[]): string[] => ['p', 'ptbl', ...cells, 'k', 'p']

function chartOf(rows: readonly string[][], direction: Direction, pitch: number): Pattern {
  const columns = rows[0]?.length ?? 0
  const pattern = newPattern(columns, rows.length)
  return withChart(
    { ...pattern, gauge: { stitches: 20, rows: 30 }, loom: { ...pattern.loom, pitch, direction } },
    {
      rows: rows.map((ids) => ({
        cells: cellsFrom(ids),
        run: null,
        heading: null,
        end: 'on' as const,
      })),
    },
  )
}

const withBand = (pattern: Pattern, band: Band): Pattern => withChart(pattern, { bands: [band] })

/** Knit or purl, peg by peg, after each time a row is worked. */
const looks = (pattern: Pattern): string[] =>
  workPattern(pattern).run.rows.map(({ after }) =>
    after.stacks.map((stack) => (stack.at(-1)?.kind.includes('purl') ? 'p' : 'k')).join(''),
  )

const findingOf = (pattern: Pattern, rule: string) =>
  checkAfresh(pattern).findings.find((finding) => finding.rule === rule)

describe.each(directions)('worked %s', (direction) => {
  test.each(crosses.map((stitch) => [stitch.id, stitch] as const))(
    '%s that is too tight is made smaller, and all its pegs look as before',
    (_, stitch) => {
      const { front, back } = stitch.cross
      const pitch = 12
      const most = Math.max(front, back) - 1
      const chart = chartOf([rowWith(cellsOf(stitch))], direction, pitch)
      const tight = {
        ...chart,
        checks: { ...chart.checks, longestCross: Math.max(1, most * pitch) },
      }
      const fixes = findingOf(tight, 'cross-tight')?.fixes ?? []
      expect(fixes.length).toBe(most < 1 ? 0 : 1)
      for (const { edit } of fixes) expect(looks(edit(tight))).toEqual(looks(tight))
    },
  )

  test.each(crosses.map((stitch) => [stitch.id, stitch] as const))(
    '%s that follows its opposite at once gets plain rounds that look like the one before',
    (_, stitch) => {
      const { cross } = stitch
      // The front loops go back the way they came.
      const back = crosses.find(
        ({ cross: other }) =>
          other.lean !== cross.lean &&
          other.front === cross.front &&
          other.back === cross.back &&
          other.frontTexture === cross.frontTexture &&
          other.backTexture === cross.backTexture,
      )
      if (!back) throw new Error(`Nothing leads back from ${stitch.id}.`)
      const rows = [rowWith(cellsOf(stitch)), rowWith(cellsOf(back))]
      const chart = chartOf(rows, direction, 4.8)
      const fixes = findingOf(chart, 'cross-often')?.fixes ?? []
      const [first, last] = looks(chart)
      const add = fixes.find(({ label }) => label.startsWith('Add'))
      const after = looks(add?.edit(chart) ?? chart)
      expect(after.length).toBeGreaterThan(2)
      expect(after.slice(0, -1).every((look) => look === first)).toBe(true)
      expect(after.at(-1)).toBe(last)
      const plain = fixes.find(({ label }) => label.startsWith('Work'))
      expect(looks(plain?.edit(chart) ?? newPattern())).toEqual([first, last])
    },
  )
})

const rope = ['2/2 LC', '', '', '']
const knit4 = ['k', 'k', 'k', 'k']

test('plain rounds before a band are added before it, and those inside it each time', () => {
  const rows = [rope, knit4, rope, knit4, knit4, knit4].map(rowWith)
  const before = withBand(chartOf(rows, 'clockwise', 4.8), { from: 2, to: 5, times: 3 })
  const [first] = findingOf(before, 'cross-often')?.fixes ?? []
  expect(first?.label).toBe('Add 2 plain rounds before this one')
  const mended = first?.edit(before) ?? before
  expect(chartOn(mended).bands).toEqual([{ from: 4, to: 7, times: 3 }])
  expect(chartOn(mended).rows.length).toBe(8)

  const own = withBand(chartOf([rope, knit4, knit4].map(rowWith), 'clockwise', 4.8), {
    from: 0,
    to: 2,
    times: 4,
  })
  const [inside] = findingOf(own, 'cross-often')?.fixes ?? []
  expect(inside?.label).toBe('Add 1 plain round before this one, each time')
  expect(inside && chartOn(inside.edit(own)).bands).toEqual([{ from: 0, to: 3, times: 4 }])
})

test('an empty peg beside a cross stays empty in the plain rounds that are added, and a loop is worked', () => {
  const cells = (list: string) =>
    list.split(' ').map((cell) => (cell === '.' ? '' : cell.replace('_', ' ')))
  const chart = chartOf(
    [
      cells('k k2tog none 2/2_LC . . . k k k'),
      cells('k k yo 2/2_LC . . . k k k'),
      cells('k k2tog yo k k k k k k k'),
    ],
    'clockwise',
    4.8,
  )
  const add = findingOf(chart, 'cross-often')?.fixes.find(({ label }) => label.startsWith('Add'))
  const mended = add?.edit(chart) ?? chart
  expect(chartOn(mended).rows.map(({ cells: [, , third] }) => third?.id)).toEqual([
    'none',
    'none',
    'none',
    'none',
    'yo',
    'yo',
  ])
})

test('in the plain rounds that are added decreases are worked as they look', () => {
  const beside = ['p2tog', 'yo', 'ssk', 'yo', 'tuck']
  const rows = [rope, rope].map((cells) => [...beside, ...cells])
  const chart = chartOf(rows, 'clockwise', 4.8)
  const add = findingOf(chart, 'cross-often')?.fixes.find(({ label }) => label.startsWith('Add'))
  expect(idsIn(add && chartOn(add.edit(chart)).rows[1]?.cells.slice(0, 5))).toEqual([
    'p',
    'k',
    'k',
    'k',
    'k',
  ])
})

test('in the plain rounds that are added a cut cross beside is worked plain, one cell for each of its pegs', () => {
  const rows = [rope, rope].map((cells) => [...cells, 'p', 'p', '2/2 LC', ''])
  const chart = chartOf(rows, 'clockwise', 4.8)
  const add = findingOf(chart, 'cross-often')?.fixes.find(({ label }) => label.startsWith('Add'))
  expect(add && idsIn(chartOn(add.edit(chart)).rows[1]?.cells)).toEqual([
    'k',
    'k',
    'k',
    'k',
    'p',
    'p',
    'k',
    'k',
  ])
})
