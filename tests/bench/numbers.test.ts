import { expect, test } from 'vitest'
import { shownNumber, stepped, typedNumber } from '../../src/bench/widgets/numbers'

test.each([
  ['18,5', 18.5],
  [' 18.5 ', 18.5],
  ['18', 18],
  [',5', 0.5],
  ['-2', -2],
  ['', null],
  ['.', null],
  ['1,2,3', null],
  ['1.000,5', null],
  ['0x10', null],
  ['1e3', null],
  ['Infinity', null],
  ['1,850', null],
  ['0,125', 0.125],
  ['18,25', 18.25],
])('“%s” is %s', (text, number) => {
  expect(typedNumber(text, false)).toBe(number)
})

test.each([
  ['12', 12],
  ['1,000', null],
  ['12.0', null],
  ['9,5', null],
])('as a whole number “%s” is %s', (text, number) => {
  expect(typedNumber(text, true)).toBe(number)
})

test('the unit of the field may be written, and no other', () => {
  expect(typedNumber('9,5 mm', false, 'mm')).toBe(9.5)
  expect(typedNumber('40mm', true, 'mm')).toBe(40)
  expect(typedNumber('9,5 cm', false, 'mm')).toBe(null)
  expect(typedNumber('mm', false, 'mm')).toBe(null)
})

test('steps leave no crumbs', () => {
  expect(shownNumber(stepped(9.5, 0.1, 1))).toBe('9.6')
  expect(shownNumber(stepped(0.2, 0.1, 1))).toBe('0.3')
  expect(shownNumber(stepped(9.5, 0.1, -1))).toBe('9.4')
})
