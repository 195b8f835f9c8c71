/** Pegs in work: where rows begin, and whether a chart goes back and forth. */
import { describe, expect, test } from 'vitest'
import { setLoom } from '../../src/pattern/edits/settings'
import { newPattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import {
  entersRound,
  gapToAndFro,
  headingFrom,
  isBackAndForth,
  turnsBack,
} from '../../src/pattern/pegs/inWork'

const run = { from: 2, to: 5 }

test.each([
  ['ring', 2, 'forward'],
  ['ring', 6, 'back'],
  ['ring', 0, 'forward'],
  ['ring', 8, 'back'],
  ['bar', 4, 'back'],
] as const)('on a %s, pegs 3 to 6 with the yarn in gap %i are worked %s', (shape, gap, way) => {
  expect(headingFrom(gap, 12, run, shape)).toBe(way)
})

test('over the join of a ring the last gap is the first one; on a bar it is not', () => {
  const first = { from: 0, to: 5 }
  const last = { from: 6, to: 11 }
  expect(headingFrom(12, 12, first, 'ring')).toBe('forward')
  expect(headingFrom(12, 12, first, 'bar')).toBe('back')
  expect(headingFrom(0, 12, last, 'ring')).toBe('back')
  expect(headingFrom(0, 12, last, 'bar')).toBe('forward')
})

test('the round is entered at its join only', () => {
  expect([0, 5, 12].map((gap) => entersRound(gap, 12))).toEqual([true, false, true])
})

test.each([
  [0, { to: 11, heading: 'forward' }, 12],
  [0, { to: 11, heading: 'back' }, 0],
  [0, { to: 10, heading: 'forward' }, 0],
  [0, undefined, 0],
  [3, { to: 11, heading: 'forward' }, 3],
] as const)('to and fro, in gap %i after %o, the yarn hangs in gap %i', (gap, last, is) => {
  expect(gapToAndFro(gap, last, 12)).toBe(is)
})

const pegs = (part: typeof run | null, toAndFro: boolean) =>
  ({ kind: 'pegs', run: part, toAndFro }) as const

test('work is back and forth on a rake, on a run of pegs, and where it says so', () => {
  expect(turnsBack({ shape: 'bar' }, pegs(null, false))).toBe(true)
  expect(turnsBack({ shape: 'ring' }, pegs(null, false))).toBe(false)
  expect(turnsBack({ shape: 'ring' }, pegs(null, true))).toBe(true)
  expect(turnsBack({ shape: 'ring' }, pegs(run, false))).toBe(true)
})

describe('a chart is back and forth', () => {
  const chart: Step = { kind: 'chart', chart: 'Chart', times: 1 }
  const ring = newPattern(12, 2)
  const on = (...steps: Step[]) => isBackAndForth({ ...ring, steps }, 'Chart')
  test.each([
    ['in the round it is not', on(chart), false],
    ['to and fro it is', on(pegs(null, true), chart), true],
    ['in the round again it is not', on(pegs(null, true), pegs(null, false), chart), false],
    ['once each way it is not', on(pegs(null, true), chart, pegs(null, false), chart), false],
    ['where no step works it, it is not', on(pegs(null, true)), false],
    ['of another chart nothing is said', on(pegs(null, true), { ...chart, chart: 'Toe' }), false],
    ['on a rake it is', isBackAndForth(setLoom(ring, { shape: 'bar' }), 'Chart'), true],
  ])('%s', (_, is, wanted) => {
    expect(is).toBe(wanted)
  })
})
