import { expect, test } from 'vitest'
import { countsSaid } from '../../src/pattern/finding'

test.each([
  [{ error: 0, warning: 0, hint: 0 }, 'none'],
  [{ error: 1, warning: 0, hint: 0 }, '1 error'],
  [{ error: 2, warning: 1, hint: 0 }, '2 errors, 1 warning'],
  [{ error: 0, warning: 0, hint: 3 }, '3 hints'],
])('findings are counted, the worst first: %o', (counts, said) => {
  expect(countsSaid(counts)).toBe(said)
})
