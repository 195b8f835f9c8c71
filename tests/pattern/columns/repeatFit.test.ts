import { expect, test } from 'vitest'
import {
  nearestDivisors,
  nearestWidths,
  repeatLeaves,
} from '../../../src/pattern/columns/repeatFit'

test.each([
  [24, 7, [6, 8]],
  [24, 8, [6, 12]],
  [24, 24, [12]],
  [24, 30, [24]],
  [7, 1, [7]],
])('of which whole repeats fill %i stitches, near %i', (room, width, widths) => {
  expect(nearestDivisors(room, width)).toEqual(widths)
})

test.each([
  [24, 10, [8, 12]],
  [22, 4, [2]],
  [22, 5, []],
  [26, 7, [13]],
  [22, 6, [11]],
])('and worth a thought: at least half of it, at most twice as wide', (room, width, widths) => {
  expect(nearestWidths(room, width)).toEqual(widths)
})

test('what a repeat leaves is said in one and in many', () => {
  expect(repeatLeaves(7, '23 (24 less 1 edge st)', 3, 2)).toBe(
    'the repeat is 7 sts and 23 (24 less 1 edge st) is not a multiple of 7: 3 repeats leave 2 sts.',
  )
  expect(repeatLeaves(7, 8, 1, 1)).toBe(
    'the repeat is 7 sts and 8 is not a multiple of 7: 1 repeat leaves 1 st.',
  )
})
