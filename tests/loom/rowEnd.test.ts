/** Where the yarn hangs and which way work goes on. */
import { describe, expect, test } from 'vitest'
import { opposite, otherDirection, runsRightToLeft } from '../../src/loom/direction'
import { headingAfter } from '../../src/loom/edgeWay'
import { afterRow, gapBefore, gapBehind, pegInLoom, turnPegOf } from '../../src/loom/rowEnd'

// Common practice: a loom worked clockwise, seen from above, runs right to left before the knitter.
test('clockwise is right to left, and back is the other way', () => {
  expect(runsRightToLeft('clockwise')).toBe(true)
  expect(runsRightToLeft('clockwise', 'back')).toBe(false)
  expect(runsRightToLeft('counterclockwise')).toBe(false)
  expect(runsRightToLeft('counterclockwise', 'back')).toBe(true)
  expect([otherDirection('clockwise'), otherDirection('counterclockwise')]).toEqual([
    'counterclockwise',
    'clockwise',
  ])
  expect([opposite('forward'), opposite('back')]).toEqual(['back', 'forward'])
})

const run = { from: 2, to: 5 }

test('a row lies between two gaps', () => {
  expect([gapBefore(run, 'forward'), gapBehind(run, 'forward')]).toEqual([2, 6])
  expect([gapBefore(run, 'back'), gapBehind(run, 'back')]).toEqual([6, 2])
})

test('a German turn lies on the last peg of its row, a wrap on the next one', () => {
  const on = (end: 'on' | 'wrap' | 'German turn') =>
    (['forward', 'back'] as const).map((heading) => turnPegOf({ ...run, end }, heading))
  expect(on('on')).toEqual([null, null])
  expect(on('German turn')).toEqual([5, 2])
  expect(on('wrap')).toEqual([6, 1])
})

test('peg 1 of a ring follows its last peg', () => {
  const ring = { shape: 'ring', pegs: 12 } as const
  expect([-1, 0, 11, 12].map((peg) => pegInLoom(peg, ring))).toEqual([11, 0, 11, 0])
  expect([-1, 12].map((peg) => pegInLoom(peg, { ...ring, shape: 'bar' }))).toEqual([-1, 12])
})

describe('after a row', () => {
  const ring = { shape: 'ring', pegs: 12 } as const
  const bar = { shape: 'bar', pegs: 12 } as const
  test.each([
    ['over a ring', { from: 0, to: 11, end: 'on' }, 'forward', ring, 0, 'forward'],
    ['back over a ring', { from: 0, to: 11, end: 'on' }, 'back', ring, 0, 'back'],
    ['over a bar', { from: 0, to: 11, end: 'on' }, 'forward', bar, 12, 'back'],
    ['back over a bar', { from: 0, to: 11, end: 'on' }, 'back', bar, 0, 'forward'],
    ['inside a bar', { from: 2, to: 5, end: 'on' }, 'forward', bar, 6, 'forward'],
    ['up to the end of a bar', { from: 6, to: 11, end: 'on' }, 'back', bar, 6, 'back'],
    ['from peg 1 of a bar', { from: 0, to: 5, end: 'on' }, 'forward', bar, 6, 'forward'],
    ['with a German turn', { ...run, end: 'German turn' }, 'forward', ring, 5, 'back'],
    ['back with a German turn', { ...run, end: 'German turn' }, 'back', ring, 3, 'forward'],
    ['with a wrap', { ...run, end: 'wrap' }, 'forward', bar, 6, 'back'],
    ['back with a wrap', { ...run, end: 'wrap' }, 'back', bar, 2, 'forward'],
  ] as const)('%s', (_, row, heading, loom, gap, way) => {
    expect(afterRow(row, heading, loom)).toEqual({ gap, heading: way })
  })
})

describe('after an edge', () => {
  const to = (gap: number, held: readonly number[], shape: 'ring' | 'bar' = 'bar') =>
    (['forward', 'back'] as const).map((heading) =>
      headingAfter(gap, { shape, pegs: 6, heading }, (peg) => held.includes(peg)),
    )
  test('a ring goes on as before, and a bar to where loops are', () => {
    expect(to(3, [0], 'ring')).toEqual(['forward', 'back'])
    expect(to(3, [4])).toEqual(['forward', 'forward'])
    expect(to(3, [3])).toEqual(['forward', 'forward'])
    expect(to(3, [2])).toEqual(['back', 'back'])
    expect(to(3, [0, 5])).toEqual(['forward', 'back'])
    expect(to(3, [])).toEqual(['forward', 'forward'])
  })
})
