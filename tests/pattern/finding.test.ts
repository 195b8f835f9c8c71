import { describe, expect, test } from 'vitest'
import {
  countBySeverity,
  countsSaid,
  isMended,
  perRule,
  worstFirst,
} from '../../src/pattern/finding'

test.each([
  [{ error: 0, warning: 0, hint: 0 }, 'none'],
  [{ error: 1, warning: 0, hint: 0 }, '1 error'],
  [{ error: 2, warning: 1, hint: 0 }, '2 errors, 1 warning'],
  [{ error: 0, warning: 0, hint: 3 }, '3 hints'],
])('findings are counted, the worst first: %o', (counts, said) => {
  expect(countsSaid(counts)).toBe(said)
})

const found = (['hint', 'error', 'warning', 'error'] as const).map((severity, at) => ({
  severity,
  at,
}))

test('how many of each kind', () => {
  expect(countBySeverity(found)).toEqual({ error: 2, warning: 1, hint: 1 })
  expect(countBySeverity([])).toEqual({ error: 0, warning: 0, hint: 0 })
})

test('the worst first, and what is as bad in its order', () => {
  expect(worstFirst(found).map(({ at }) => at)).toEqual([1, 3, 2, 0])
})

describe('a repair', () => {
  const of = (...rules: string[]) => rules.map((rule) => ({ rule }))
  test.each([
    ['takes its only finding away', of('float'), of(), true],
    ['takes one of two away', of('float', 'float'), of('float'), true],
    ['leaves as many', of('float'), of('float'), false],
    ['makes more', of('float'), of('float', 'float'), false],
    ['brings one of another rule', of('float'), of('stretch'), false],
    ['leaves those of another rule', of('float', 'stretch'), of('stretch'), true],
    ['brings one more of another', of('float', 'stretch'), of('stretch', 'stretch'), false],
    ['takes those of another away too', of('float', 'stretch'), of(), true],
    ['has nothing to mend', of('stretch'), of(), false],
  ])('%s', (_, before, after, mends) => {
    expect(isMended('float', before, after)).toBe(mends)
  })

  test('is held against how many there are of each rule', () => {
    expect([...perRule(of('float', 'stretch', 'float'))]).toEqual([
      ['float', 2],
      ['stretch', 1],
    ])
  })
})
