import { expect, test } from 'vitest'
import { timeOf } from '../../src/shelf/dates'

test('an hour of one figure has no nought before it', () => {
  expect(timeOf('2026-01-05T16:43:00')).toMatch(/^(?:4:43\sPM|16:43)/u)
})
