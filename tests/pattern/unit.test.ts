/** Rounds and rows. */
import { expect, test } from 'vitest'
import { chartOn } from '../../src/pattern/charts'
import { withChart } from '../../src/pattern/edits/chart'
import { setLoom } from '../../src/pattern/edits/settings'
import { setEnd, setHeading, setRun } from '../../src/pattern/edits/turning'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { goesRound, unitOfPiece, unitOfRow, unitOfStep } from '../../src/pattern/unit'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { patternOf } from './edits/chart-text'

const ring = newPattern(8, 2)
const units = (pattern: Pattern) =>
  workPattern(pattern).firstRuns.map((run) => unitOfRow(run, pattern.loom.shape))

test('a row is a round where it goes once round a ring, forward and without a turn', () => {
  expect(units(ring)).toEqual(['round', 'round'])
  expect(units(setLoom(ring, { shape: 'bar' }))).toEqual(['row', 'row'])
  expect(units(setHeading(ring, 0, 'back'))).toEqual(['row', 'row'])
  expect(units(setRun(ring, 0, { from: 0, to: 6 }))[0]).toBe('row')
  expect(units(setRun(ring, 0, { from: 1, to: 7 }))[0]).toBe('row')
  expect(units(setEnd(ring, 0, 'wrap'))[0]).toBe('row')
})

test('one whose chart leaves pegs out goes round too', () => {
  const narrow = setLoom(patternOf('k k k k k k'), { pegs: 8 })
  expect(units(narrow)).toEqual(['round'])
})

test('a row that names all the pegs goes round as one that names none', () => {
  const [row] = chartOn(ring).rows
  if (!row) throw new Error('The chart has a row.')
  const named = (to: number) => withChart(ring, { rows: [{ ...row, run: { from: 0, to } }] })
  expect([units(named(7)), units(named(6))]).toEqual([['round'], ['row']])
})

test('short rows go on as rows until the last turned peg is worked', () => {
  const turned = setEnd(setRun(newPattern(8, 4), 0, { from: 0, to: 4 }), 0, 'German turn')
  const back = setHeading(setRun(turned, 1, { from: 0, to: 3 }), 2, 'forward')
  expect(units(back)).toEqual(['row', 'row', 'row', 'round'])
  const [, , third] = workPattern(back).firstRuns
  expect(third && goesRound(third, 'ring')).toBe(true)
})

test('a step is counted in rounds where each of its rows goes round, and a piece where each step is', () => {
  const open: Step = { kind: 'pegs', run: null, toAndFro: true }
  const [castOn, chart, bindOff] = ring.steps as [Step, Step, Step]
  const work = (pattern: Pattern, ...steps: Step[]) => workPiece({ ...pattern, steps })
  const each = (...[pattern, ...steps]: Parameters<typeof work>) =>
    work(pattern, ...steps).steps.map(unitOfStep)
  expect(each(ring, castOn, chart, bindOff)).toEqual([null, 'round', null])
  expect(each(ring, castOn, open, chart)).toEqual([null, null, 'row'])
  expect(each(setEnd(ring, 1, 'wrap'), castOn, chart)).toEqual([null, 'row'])
  expect(each(setRun(ring, 1, { from: 1, to: 7 }), castOn, chart)).toEqual([null, 'row'])
  expect(each(setRun(ring, 1, { from: 0, to: 6 }), castOn, chart)).toEqual([null, 'row'])
  expect(unitOfPiece(work(ring, castOn, chart, bindOff))).toBe('round')
  expect(unitOfPiece(work(ring, castOn, open, chart, bindOff))).toBe('row')
  expect(unitOfPiece(work(setLoom(ring, { shape: 'bar' }), castOn, chart))).toBe('row')
})
