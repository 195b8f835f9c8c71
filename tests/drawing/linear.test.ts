import { expect, test } from 'vitest'
import { linear } from '../../src/drawing/linear'

test('a straight scale leads from one range to the other and back, also beyond its ends', () => {
  const scale = linear([0, 4], [10, 2])
  expect([0, 1, 4, 5].map(scale)).toEqual([10, 8, 2, 0])
  expect([10, 8, 2, 0].map(scale.invert)).toEqual([0, 1, 4, 5])
})

test('a range of no length lies in the middle of the other', () => {
  expect(linear([0, 0], [4, 8])(3)).toBe(6)
})
