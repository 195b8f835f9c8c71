import { expect, test } from 'vitest'
import { timeOf, whenOf } from '../../src/shelf/dates'

test('an hour of one figure has no nought before it', () => {
  expect(timeOf('2026-01-05T16:43:00')).toMatch(/^(?:4:43\sPM|16:43)/u)
})

test('a time of today or yesterday is told by that, another by its day', () => {
  const now = new Date(2026, 2, 29, 9, 5)
  const when = (day: number, hour: number) =>
    whenOf(new Date(2026, 2, day, hour, 40).toISOString(), now)
  expect(when(29, 0)).toMatch(/^today (12:40\sAM|0?0:40)$/u)
  expect(when(28, 21)).toMatch(/^yesterday (9:40\sPM|21:40)$/u)
  expect(when(27, 23)).toMatch(/27/)
  expect(whenOf('', now)).toBe('')
})
