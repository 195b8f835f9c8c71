/** How pegs, gaps and copies of a repeat are named in findings. */
import { expect, test } from 'vitest'
import { columnsUnder, firstPerColumn, inFirstCopy, runsOf } from '../../src/checks/copies'
import { settingOf } from '../../src/checks/setting'
import { gapNamed, inEachRepeat, pegNumber, PegsNamed } from '../../src/checks/wording'
import { setLoom } from '../../src/pattern/edits/settings'
import { layOut } from '../../src/pattern/layout'
import { newPattern } from '../../src/pattern/pattern'

test('pegs are counted from 1, and on over the join', () => {
  expect([-1, 0, 11, 12].map((peg) => pegNumber(peg, 12))).toEqual([12, 1, 12, 1])
  expect(PegsNamed({ from: 2, to: 4 })).toBe('Pegs 3-5')
  expect(PegsNamed({ from: 2, to: 2 })).toBe('Peg 3')
})

test('a gap is named after the pegs beside it, and at the ends of a rake after one', () => {
  const ring = settingOf(newPattern(12, 1))
  const bar = settingOf(setLoom(newPattern(12, 1), { shape: 'bar' }))
  expect([0, 5, 12].map((gap) => gapNamed(gap, ring))).toEqual([
    'between pegs 12 and 1',
    'between pegs 5 and 6',
    'between pegs 12 and 1',
  ])
  expect([0, 1, 11, 12].map((gap) => gapNamed(gap, bar))).toEqual([
    'before peg 1',
    'between pegs 1 and 2',
    'between pegs 11 and 12',
    'after peg 12',
  ])
})

/** A peg before the repeat, three copies of four pegs, a peg after it. */
const layout = layOut({ columns: 6, repeat: { from: 1, to: 4 } }, 14)

test('what stands in the first copy is said of each', () => {
  expect([0, 1, 4, 5, 13].map((peg) => inEachRepeat(layout, peg))).toEqual([
    '',
    ' (in each of the 3 repeats)',
    ' (in each of the 3 repeats)',
    '',
    '',
  ])
  expect(inEachRepeat(layout, 1, 2)).toBe(' (in 2 of the 3 repeats)')
  expect(inEachRepeat(layOut({ columns: 6, repeat: { from: 1, to: 4 } }, 6), 1)).toBe('')
  expect(inEachRepeat(layOut({ columns: 6, repeat: null }, 6), 1)).toBe('')
})

test('later copies only say the same again', () => {
  const first = layout.columnOf.map((_, peg) => inFirstCopy(layout, peg))
  expect(first.flatMap((is, peg) => (is ? [peg] : []))).toEqual([0, 1, 2, 3, 4, 13])
  const found = [9, 2, 1, 0, 13].map((peg) => ({ peg }))
  expect(firstPerColumn(found, layout).map(({ peg }) => peg)).toEqual([0, 1, 2, 13])
  const one = [{ peg: 9 }]
  expect(firstPerColumn(one, layout)).toBe(one)
  expect(columnsUnder(layout, { from: 3, to: 6 })).toEqual([3, 4, 1, 2])
  expect(columnsUnder(layout, { from: -1, to: 0 })).toEqual([0])
})

test('neighbouring pegs are joined into runs', () => {
  expect(runsOf([5, 1, 2, 2, 7, 6])).toEqual([
    { from: 1, to: 2 },
    { from: 5, to: 7 },
  ])
  expect(runsOf([])).toEqual([])
})
