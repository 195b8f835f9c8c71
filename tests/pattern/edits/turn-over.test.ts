/** A chart with its columns and pegs counted from the other end. */
import { describe, expect, test } from 'vitest'
import { chartOn } from '../../../src/pattern/charts'
import type { Heels } from '../../../src/pattern/edits/part-rows'
import { setEnd, setHeading, setRun } from '../../../src/pattern/edits/turning'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { reverseCells, reverseRun, turnOver } from '../../../src/pattern/edits/turn-over'
import { newPattern, type LoomSetup, type Pattern, type Run } from '../../../src/pattern/pattern'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { cellsFrom, idsIn } from '../../cells'
import { patternOf, textOf } from './chart-text'

const cells = ['k', '2/2 LC', '', '', '', 'p']

test('a cross keeps its place in its lowest column, whole or cut', () => {
  expect(idsIn(reverseCells(cellsFrom(cells)))).toEqual(['p', '2/2 LC', '', '', '', 'k'])
  expect(idsIn(reverseCells(cellsFrom(['p', '2/2 LC', ''])))).toEqual(['2/2 LC', '', 'p'])
  expect(
    idsIn(reverseCells(cellsFrom(cells), (stitch) => standardVocabulary.mirrorOf(stitch))),
  ).toEqual(['p', '2/2 RC', '', '', '', 'k'])
})

test('columns that go on with no stitch stay, at the other end', () => {
  expect(reverseCells(cellsFrom(['', '', 'p']))).toEqual([...cellsFrom(['p']), null, null])
})

test('a run lies as far from the other end', () => {
  expect(reverseRun({ from: 2, to: 5 }, 12)).toEqual({ from: 6, to: 9 })
  expect(reverseRun(null, 12)).toBeNull()
})

const turned = (pattern: Pattern, loom: Partial<LoomSetup> = {}, heels?: Heels) =>
  turnOver(chartOn(pattern), { ...pattern.loom, ...loom }, heels)
const ways = (pattern: Pattern, loom: Partial<LoomSetup> = {}, heels?: Heels) =>
  turned(pattern, loom, heels).rows.map(({ run, heading, end }) => [
    run ? `${run.from + 1}-${run.to + 1}` : 'all',
    heading,
    end,
  ])

test('whole rows are worked the way they were, with the repeat at the other end', () => {
  const pattern = setRepeat(patternOf('k p k k2tog yo', 'p k k k k'), { from: 1, to: 2 })
  const chart = turned(pattern)
  expect(chart.repeat).toEqual({ from: 2, to: 3 })
  expect(textOf({ ...pattern, charts: [{ ...pattern.charts[0], chart }] })).toEqual([
    'yo k2tog k p k',
    'k k k k p',
  ])
  expect(chart.rows.map(({ heading }) => heading)).toEqual([null, null])
})

describe('rows of a part of the pegs', () => {
  const short = setEnd(setRun(newPattern(12, 4), 0, { from: 0, to: 7 }), 0, 'German turn')
  const heel = setEnd(setRun(short, 1, { from: 3, to: 6 }), 1, 'German turn')
  const closed = setRun(heel, 2, { from: 3, to: 11 })

  test('that lead from one end to the other keep their turns as far from the other end', () => {
    expect(ways(closed)).toEqual([
      ['1-9', null, 'German turn'],
      ['5-8', null, 'German turn'],
      ['5-12', null, 'on'],
      ['all', null, 'on'],
    ])
  })

  test('are turned over where that is asked for, and only where the work leads otherwise is a way said', () => {
    expect(ways(setHeading(closed, 3, 'forward'), {}, 'turned over')).toEqual([
      ['5-12', 'back', 'German turn'],
      ['6-9', null, 'German turn'],
      ['1-9', null, 'on'],
      ['all', 'forward', 'on'],
    ])
  })

  test('that begin and end at one end are turned over: their headings flip', () => {
    const wedge = setRun(short, 1, { from: 0, to: 6 })
    expect(ways(wedge, { shape: 'bar' })).toEqual([
      ['all', null, 'on'],
      ['5-12', null, 'German turn'],
      ['6-12', null, 'on'],
      ['all', null, 'on'],
    ])
  })
})

describe('rows between the turns that would lie beyond the loom', () => {
  const heel = (first: number, back: number, between: Run) => {
    const start = setEnd(setRun(newPattern(12, 4), 0, { from: 0, to: first }), 0, 'German turn')
    const turned = setEnd(setRun(start, 1, { from: back, to: first - 1 }), 1, 'German turn')
    return setRun(setRun(turned, 2, between), 3, { from: back, to: 11 })
  }
  const placed = (pattern: Pattern) => ways(pattern)[0]?.[1] === null

  test('keep the heel from being placed, and it is turned over', () => {
    expect(placed(heel(7, 3, { from: 3, to: 10 }))).toBe(true)
    expect(placed(heel(7, 3, { from: 3, to: 11 }))).toBe(false)
    expect(placed(heel(9, 5, { from: 3, to: 8 }))).toBe(true)
    expect(placed(heel(9, 5, { from: 2, to: 8 }))).toBe(false)
  })

  test('nor may the row before the first turn be left without a peg', () => {
    const long = heel(9, 5, { from: 5, to: 8 })
    const rows = chartOn(long).rows
    const [first, , third, last] = rows.map(({ run }) => run)
    expect([first, third, last]).toEqual([
      { from: 0, to: 9 },
      { from: 5, to: 8 },
      { from: 5, to: 11 },
    ])
    const led = (to: number) => {
      const start = setEnd(
        setRun(setRun(newPattern(12, 4), 0, { from: 0, to }), 1, { from: 4, to: 9 }),
        1,
        'German turn',
      )
      return setRun(setEnd(setRun(start, 2, { from: 5, to: 8 }), 2, 'German turn'), 3, {
        from: 5,
        to: 11,
      })
    }
    expect(placed(led(3))).toBe(true)
    expect(placed(led(2))).toBe(false)
  })
})
