import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { inTime, whyNotKept } from '../../src/shelf/answers'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

const reasonOf = (answer: Promise<unknown>): Promise<string> =>
  answer.then(
    () => 'kept',
    (error: unknown) => whyNotKept(error),
  )

test('an answer in time is the answer, and no clock goes on', async () => {
  expect(await inTime(Promise.resolve(7), 100)).toBe(7)
  expect(vi.getTimerCount()).toBe(0)
})

test('silence, a full store and a refusal are told apart, each with what to do', async () => {
  const silent = reasonOf(inTime(new Promise(() => undefined), 100))
  await vi.advanceTimersByTimeAsync(100)
  expect(await silent).toMatch(/doesn’t answer.*Save your piece as a file/)
  const full = new DOMException('', 'QuotaExceededError')
  expect(await reasonOf(inTime(Promise.reject(full), 100))).toMatch(
    /no room left.*Save your piece as a file/,
  )
  const refused = new DOMException('', 'InvalidStateError')
  expect(await reasonOf(inTime(Promise.reject(refused), 100))).toMatch(
    /won’t allow it.*Save your piece as a file/,
  )
})
