import { expect, it } from 'vitest'
import { caseOf, kinds } from './cases'

/** `npm run fuzz` has 100,000 of each, and looks at their times as well. */
const few = { texts: 160, files: 80 } as const

it.each(kinds)('No spoilt %s throw, or say what is no number', (kind) => {
  let used = 0
  for (let index = 0; index < few[kind]; index++)
    if (caseOf(kind, 1, index).run((_, does) => does())) used++
  // Most are still taken, so that something comes of them.
  expect(used).toBeGreaterThan(few[kind] / 10)
})

it.each(kinds)('The same number is the same case: %s', (kind) => {
  expect(caseOf(kind, 5, 8).input).toBe(caseOf(kind, 5, 8).input)
  expect(caseOf(kind, 5, 8).input).not.toBe(caseOf(kind, 6, 8).input)
})
