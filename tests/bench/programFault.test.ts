import { expect, test } from 'vitest'
import { programFault } from '../../src/bench/state/programFault'

test('the browser’s note on sizes is not told as a fault', () => {
  for (const message of [
    'ResizeObserver loop completed with undelivered notifications.',
    'ResizeObserver loop limit exceeded',
  ]) {
    expect(programFault(new ErrorEvent('error', { message }), '')).toBeNull()
    expect(programFault(message, '')).toBeNull()
  }
})

test('a mistake of the program is told, with what is known of the piece', () => {
  const kept = 'Your piece is kept in this browser.'
  const told = 'This did not work (a row is missing). Your piece is kept in this browser.'
  expect(programFault(new ErrorEvent('error', { message: 'a row is missing' }), kept)).toBe(told)
  expect(programFault(new Error('a row is missing'), kept)).toBe(told)
  expect(programFault('a row is missing', '')).toBe('This did not work (a row is missing).')
})
