/** Beside a heel the texture goes on: no plain rounds across the other pegs (common practice). */
import { withChart, eachChart } from '../../../src/pattern/edits/chart'
import { describe, expect, test } from 'vitest'
import { checkPiece } from '../../../src/checks/piece/check'
import { checkPattern } from '../../../src/checks/check'
import { addChart, addStep } from '../../../src/pattern/edits/piece'
import { setBand } from '../../../src/pattern/edits/rows'
import { textureBefore } from '../../../src/pattern/generate/before'
import { putShortRows } from '../../../src/pattern/generate/putIn'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import { type ShortRowWish } from '../../../src/pattern/pattern'
import { newPattern, type Chart, type Pattern } from '../../../src/pattern/pattern'
import type { PatternRow } from '../../../src/pattern/row'
import { onChart, chartOn, namedOn } from '../../../src/pattern/charts'
import { workPattern } from '../../../src/pattern/work'
import { workPiece } from '../../../src/pattern/workPiece'
import { cellsFrom } from '../../cells'

const pegs = 24
/** Four rounds, each told from the others on every peg: k2 p2 moved on by one, and a cross in the third. */
const round = (shift: number): readonly string[] =>
  Array.from({ length: pegs }, (_, peg) => ((peg + shift) % 4 < 2 ? 'k' : 'p'))
const crossed = round(0).map((cell, peg) => (peg === 16 ? '1/1 LC' : peg === 17 ? '' : cell))
const whole = (ids: readonly string[]) =>
  ({ cells: cellsFrom(ids), run: null, heading: null, end: 'on' }) as const
const textured: Chart = {
  columns: pegs,
  repeat: null,
  bands: [],
  rows: [round(0), round(1), crossed, round(3)].map(whole),
}
const repeated: Chart = {
  columns: 4,
  repeat: { from: 0, to: 3 },
  bands: [],
  rows: [0, 1, 2, 3].map((shift) => whole(round(shift).slice(0, 4))),
}
const withGauge = (chart: Chart): Pattern =>
  withChart({ ...newPattern(pegs), gauge: { stitches: 22, rows: 30 } }, chart)

/** What one peg is worked in, row by row. */
const onPeg = (rows: readonly PatternRow[], peg: number): string[] =>
  rows.flatMap(({ sites }) => {
    const site = sites.find((one) => peg >= one.peg && peg < one.peg + one.stitch.width)
    return site ? [site.stitch.id] : []
  })
const rowsOf = (pattern: Pattern) => workPattern(pattern).run.rows.map(({ row }) => row)
const errorsOf = (pattern: Pattern) =>
  checkPattern(workPattern(pattern)).findings.filter(({ severity }) => severity !== 'hint')

/** Pegs of the instep: beside the heel and its corners. */
const beside = ({ run }: ShortRowWish) =>
  Array.from({ length: pegs }, (_, peg) => peg).filter(
    (peg) => peg < run.from - 1 || peg > run.to + 1,
  )

const heel = usualHeel({ pegs, shape: 'ring' })
const wishes: readonly (readonly [string, ShortRowWish])[] = [
  ['the usual heel', heel],
  ['a wrapped heel', { ...heel, turn: 'wrap' }],
  ['a heel in the middle of the round', { ...heel, run: { from: 4, to: 15 } }],
  ['a wedge', { ...heel, shape: 'wedge', run: { from: 4, to: 15 } }],
]

describe.each([
  ['a chart with a column for each peg', textured],
  ['a repeat', repeated],
])('%s goes on', (_, chart) => {
  test.each(wishes)('beside %s put into it, with no round more', (_what, wish) => {
    const pattern = withGauge(chart)
    const rows = rowsOf(pattern)
    for (let at = 1; at < chart.rows.length; at++) {
      const put = putShortRows(pattern, at, wish)
      if (!put.ok) throw new Error(put.message)
      expect(errorsOf(put.pattern)).toEqual([])
      // After the last row but one, a round of the next time is needed to take the turns in.
      const more = at === chart.rows.length - 1 ? [rows[0]] : []
      const expected = [...rows, ...more].flatMap((row) => (row ? [row] : []))
      for (const peg of beside(wish))
        expect([at, peg, onPeg(rowsOf(put.pattern), peg)]).toEqual([at, peg, onPeg(expected, peg)])
    }
  })

  test.each(wishes)('beside %s after its last round, from its first', (_what, wish) => {
    const pattern = withGauge(chart)
    const rows = rowsOf(pattern)
    const put = putShortRows(pattern, chart.rows.length, wish)
    if (!put.ok) throw new Error(put.message)
    expect(errorsOf(put.pattern)).toEqual([])
    for (const peg of beside(wish))
      expect([peg, onPeg(rowsOf(put.pattern), peg)]).toEqual([
        peg,
        onPeg([...rows, ...rows.slice(0, 2)], peg),
      ])
  })

  test('beside a heel before rounds that are worked several times', () => {
    for (const times of [2, 5]) {
      const pattern = setBand(withGauge(chart), 2, 3, times)
      const put = putShortRows(pattern, 2, heel)
      if (!put.ok) throw new Error(put.message)
      expect(errorsOf(put.pattern)).toEqual([])
      expect(chartOn(put.pattern).bands.map((band) => band.times)).toEqual(
        times > 2 ? [times - 1] : [],
      )
      for (const peg of beside(heel))
        expect([peg, onPeg(rowsOf(put.pattern), peg)]).toEqual([peg, onPeg(rowsOf(pattern), peg)])
    }
  })
})

test('a heel that is a chart of its own goes on with the chart worked before it', () => {
  const leg = withGauge(textured)
  const before = textureBefore(leg, 2)
  expect(before?.chart).toBe(namedOn(leg).name)
  const made = shortRowChart(leg.loom, { ...heel, beside: before?.beside ?? null })
  if (!made.ok) throw new Error(made.message)
  const added = addStep(addChart(leg, 'Heel', made.chart), 2, {
    kind: 'chart',
    chart: 'Heel',
    times: 1,
  })
  expect(checkPiece(workPiece(added)).filter(({ severity }) => severity !== 'hint')).toEqual([])
  const rows = rowsOf(onChart(added, 'Heel'))
  for (const peg of beside(heel))
    expect([peg, onPeg(rows, peg)]).toEqual([peg, onPeg(rowsOf(leg).slice(0, 2), peg)])
  // On the heel itself all is plain.
  for (let peg = heel.run.from; peg <= heel.run.to; peg++)
    expect(new Set(onPeg(rows, peg))).toEqual(new Set(['k']))
})

test('what the edge of a heel would cut is knitted: a cross, and a decrease that has lost its yarn over', () => {
  const lace = round(0).map((_, peg) => (peg === 12 ? 'yo' : peg === 13 ? 'ssk' : 'k'))
  const rope = round(0).map((_, peg) => (peg === 12 ? '1/1 LC' : peg === 13 ? '' : 'k'))
  // The usual heel lies on pegs 2 to 13: both lie half on it.
  expect(heel.run).toEqual({ from: 1, to: 12 })
  for (const cells of [lace, rope]) {
    const leg = withGauge({ ...textured, rows: [whole(cells), whole(cells)] })
    const made = shortRowChart(leg.loom, {
      ...heel,
      beside: textureBefore(leg, 2)?.beside ?? null,
    })
    if (!made.ok) throw new Error(made.message)
    expect(errorsOf(withChart(leg, made.chart))).toEqual([])
    expect(made.chart.rows.flatMap((row) => row.cells).filter((cell) => cell?.id !== 'k')).toEqual(
      [],
    )
  }
})

test('a toe ends with its last short row, and is grafted there', () => {
  const foot = withGauge(textured)
  const toe = { ...heel, shape: 'toe' } as const
  const made = shortRowChart(foot.loom, {
    ...toe,
    beside: textureBefore(foot, 2)?.beside ?? null,
  })
  if (!made.ok) throw new Error(made.message)
  const last = made.chart.rows.at(-1)
  // No row of it goes over the instep.
  expect(made.chart.rows.filter(({ run }) => run === null || run.to > toe.run.to)).toEqual([])
  expect(last).toMatchObject({ run: { from: toe.run.from, to: toe.run.to - 1 }, end: 'on' })
  const closedBy = (how: 'graft' | 'basic') => {
    const steps = foot.steps.map((step) =>
      step.kind === 'bind off' ? ({ ...step, how } as const) : step,
    )
    return addStep(addChart({ ...foot, steps }, 'Toe', made.chart), 2, {
      kind: 'chart',
      chart: 'Toe',
      times: 1,
    })
  }
  const errors = (pattern: Pattern) =>
    checkPiece(workPiece(pattern)).filter(({ severity }) => severity !== 'hint')
  expect(errors(closedBy('graft'))).toEqual([])
  // Bound off otherwise, the strand of the last turn is left.
  expect(
    errors(closedBy('basic'))
      .map(({ message }) => message)
      .join(),
  ).toContain('Peg 13')
  // A lost turn within the toe is found all the same.
  const spoilt = closedBy('graft')
  const charts = eachChart(spoilt.charts, (one) =>
    one.name === 'Toe'
      ? { ...one, chart: { ...one.chart, rows: one.chart.rows.slice(0, -1) } }
      : one,
  )
  expect(errors({ ...spoilt, charts }).length).toBeGreaterThan(0)
})
