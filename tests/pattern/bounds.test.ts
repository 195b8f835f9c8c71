/** Numbers from files and texts are bounded before anything is unfolded, and no estimate is without number. */
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPiece } from '../../src/checks/piece/check'
import { insertRows, setBand } from '../../src/pattern/edits/rows'
import { setGauge, setLoom } from '../../src/pattern/edits/settings'
import { limits, newPattern, type Pattern } from '../../src/pattern/pattern'
import { pieceLimits, type Step } from '../../src/pattern/piece'
import { rowNumbers, schedule } from '../../src/pattern/schedule'
import { sizeOf } from '../../src/pattern/size'
import { totalsOf } from '../../src/pattern/totals'
import { workPattern } from '../../src/pattern/work'
import { plainRows } from '../../src/pattern/amount'
import { workPiece } from '../../src/pattern/workPiece'
import { stitchOf } from '../../src/stitches/vocabulary'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const chart = (times: number): Step => ({ kind: 'chart', chart: 'Chart', times })
const most = pieceLimits.rows.most

const withSteps = (pattern: Pattern, ...steps: Step[]): Pattern => ({
  ...pattern,
  steps,
})

const banded = (rows: number, times: number): Pattern => {
  const pattern = newPattern(4, rows)
  return withChart(pattern, { bands: [{ from: 0, to: rows - 1, times }] })
}

/** More rows after the bands. */
const withRowsAfter = (pattern: Pattern, count: number): Pattern =>
  withChart(pattern, { rows: [...chartOn(pattern).rows, ...chartOn(newPattern(4, count)).rows] })

describe('a chart', () => {
  test('is unrolled to no more rows than a piece can have, and its numbers count every round', () => {
    const long = chartOn(withRowsAfter(banded(600, 99), 1))
    const passes = schedule(long)
    expect(passes.length).toBeLessThanOrEqual(most)
    expect(passes.length).toBeGreaterThan(most - 601)
    expect(new Set(passes.map(({ row }) => row)).size).toBe(601)
    expect(rowNumbers(long).at(-1)).toBe(600 * 99 + 1)
    expect(rowNumbers(long).slice(0, 3)).toEqual([1, 2, 3])
  })

  test('of a short band is unrolled whole', () => {
    const short = chartOn(banded(2, 99))
    expect(schedule(short).map(({ number }) => number)).toEqual(
      Array.from({ length: 198 }, (_, index) => index + 1),
    )
  })

  test.each([NaN, Infinity, 1e9, -3, 0, 2.4])('is worked with a band of %d times', (times) => {
    const { firstRuns } = workPattern(banded(3, times))
    expect(firstRuns.length).toBe(3)
  })

  test('keeps its true height where it is not unrolled', () => {
    const pattern = setGauge(banded(600, 99), { stitches: 20, rows: 30 })
    expect(sizeOf(chartOn(pattern), pattern)?.height).toBeCloseTo(198_000)
  })
})

describe('a piece', () => {
  test.each([99, 1e9, Infinity])(
    'works a chart %d times up to its limit, and says the rest',
    (times) => {
      const work = workPiece(withSteps(banded(600, 99), castOn, chart(times), chart(times)))
      expect(work.rows).toBe(most)
      expect(work.steps[2]?.rows?.rows.length).toBe(0)
      expect(work.steps[1]?.leftOut).toBe(600 * 99 * 99 - most)
      const long = checkPiece(work).filter(({ rule }) => rule === 'piece-too-long')
      expect(long.map(({ message }) => message.includes('5874600 rounds beyond'))).toEqual([
        true,
        false,
      ])
    },
  )

  test.each([1e9, Infinity])('works %d plain rows up to its limit', (rows) => {
    const plain: Step = { kind: 'plain', stitch: stitchOf('k'), amount: { rows } }
    const work = workPiece(withSteps(newPattern(4, 1), castOn, plain))
    expect(work.rows).toBe(most)
    expect(work.steps[1]?.leftOut).toBeLessThanOrEqual(1e6)
  })

  test.each([5e-324, 1e308, NaN, Infinity])(
    'has a number of rows to a length in a gauge of %d',
    (rows) => {
      const count = plainRows({ gauge: { stitches: 20, rows } }, { mm: 3000 })
      expect(count).toBeGreaterThanOrEqual(1)
      expect(count).toBeLessThanOrEqual(1e6)
    },
  )
})

const odd = fc.constantFrom(5e-324, 1e-300, 0.1, 0, 1, 22, 1e9, 1e308, Infinity)

test('totals and sizes are numbers or nothing, whatever gauge, swatch and pace say', () => {
  fc.assert(
    fc.property(odd, odd, odd, odd, odd, odd, (stitches, rows, inSwatch, high, grams, pace) => {
      const pattern = setGauge(newPattern(4, 2), { stitches, rows })
      const swatch = { stitches: inSwatch, rows: high, grams }
      const { steps, whole } = totalsOf(workPiece({ ...pattern, pace, swatch }))
      for (const { yarn, grams: weight, minutes } of [...steps, whole])
        for (const value of [yarn, weight, minutes])
          if (value !== null) expect(value).toSatisfy(Number.isFinite)
      const size = sizeOf(chartOn(pattern), pattern)
      if (size) expect(size.width + size.height).toSatisfy(Number.isFinite)
    }),
  )
})

test('edits bound what they are given', () => {
  const pattern = newPattern(4, 2)
  expect(chartOn(insertRows(pattern, 0, 1e10)).rows.length).toBe(limits.rows.most)
  expect(chartOn(setBand(pattern, 0, 1, 2.4)).bands[0]?.times).toBe(2)
  expect(setLoom(pattern, { pegs: NaN, pitch: NaN }).loom).toMatchObject({
    pegs: limits.pegs.least,
    pitch: limits.pitch.least,
  })
})
