import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { newPattern } from '../../src/pattern/pattern'
import { autosave, flushOn } from '../../src/shelf/autosave'
import type { KeepStatus, KeptPiece } from '../../src/shelf/keep'

const pattern = newPattern(36, 2)
const piece = (revision: number, id = 'a'): KeptPiece => ({ id, pattern, revision })

/** A shelf whose answers are given by hand, so that writes can overlap with changes. */
function slowShelf() {
  const asked: number[] = []
  const answers: ((status: KeepStatus) => void)[] = []
  const keep = ({ revision }: KeptPiece) => {
    asked.push(revision)
    return new Promise<KeepStatus>((resolve) => answers.push(resolve))
  }
  const answer = async (state: KeepStatus['state'] = 'kept') => {
    const status: KeepStatus =
      state === 'kept'
        ? { state, id: 'a', revision: 0, date: '' }
        : { state, message: 'The store is full.' }
    answers.shift()?.(status)
    await vi.advanceTimersByTimeAsync(0)
  }
  return { asked, answer, keep }
}

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

test('many changes are one write, of the newest, and not put off for ever', async () => {
  const shelf = slowShelf()
  const saving = autosave(shelf, { wait: 100, onStatus: () => undefined })
  for (let revision = 1; revision <= 9; revision++) {
    saving.changed(piece(revision))
    await vi.advanceTimersByTimeAsync(20)
  }
  expect(shelf.asked).toEqual([5])
})

test('a change during a write is written after it', async () => {
  const shelf = slowShelf()
  const saving = autosave(shelf, { wait: 100, onStatus: () => undefined })
  saving.changed(piece(1))
  await vi.advanceTimersByTimeAsync(100)
  saving.changed(piece(2))
  await vi.advanceTimersByTimeAsync(500)
  expect(shelf.asked).toEqual([1])
  await shelf.answer()
  expect(shelf.asked).toEqual([1, 2])
})

test('what was not kept is said and tried again with the next flush', async () => {
  const shelf = slowShelf()
  const said: string[] = []
  const saving = autosave(shelf, { wait: 100, onStatus: ({ state }) => said.push(state) })
  saving.changed(piece(1))
  await vi.advanceTimersByTimeAsync(100)
  await shelf.answer('not kept')
  void saving.flush()
  await vi.advanceTimersByTimeAsync(0)
  await shelf.answer()
  expect(shelf.asked).toEqual([1, 1])
  expect(said).toEqual(['not kept', 'kept'])
})

test('what was not kept is tried again by itself, and is not kept until then', async () => {
  const shelf = slowShelf()
  const said: [string, number][] = []
  const saving = autosave(shelf, {
    wait: 100,
    again: 1000,
    onStatus: ({ state }, { revision }) => said.push([state, revision]),
  })
  saving.changed(piece(1))
  expect(saving.unkept()).toEqual([piece(1)])
  await vi.advanceTimersByTimeAsync(100)
  expect(saving.unkept()).toEqual([piece(1)])
  await shelf.answer('not kept')
  expect(saving.unkept()).toEqual([piece(1)])
  await vi.advanceTimersByTimeAsync(1000)
  await shelf.answer()
  expect(saving.unkept()).toEqual([])
  expect(said).toEqual([
    ['not kept', 1],
    ['kept', 1],
  ])
  await vi.advanceTimersByTimeAsync(5000)
  expect(shelf.asked).toEqual([1, 1])
})

test('two pieces are both kept', async () => {
  const shelf = slowShelf()
  const saving = autosave(shelf, { wait: 100, onStatus: () => undefined })
  saving.changed(piece(1, 'a'))
  saving.changed(piece(2, 'b'))
  await vi.advanceTimersByTimeAsync(100)
  await shelf.answer()
  expect(shelf.asked).toEqual([1, 2])
})

test('hiding the page writes at once; without a change nothing is written', async () => {
  const shelf = slowShelf()
  const saving = autosave(shelf, { wait: 100, onStatus: () => undefined })
  const page = new EventTarget()
  const end = flushOn(saving, page, ['pagehide'])
  page.dispatchEvent(new Event('pagehide'))
  await vi.advanceTimersByTimeAsync(0)
  expect(shelf.asked).toEqual([])
  saving.changed(piece(3))
  page.dispatchEvent(new Event('pagehide'))
  await vi.advanceTimersByTimeAsync(0)
  expect(shelf.asked).toEqual([3])
  await shelf.answer()
  end()
  saving.changed(piece(4))
  page.dispatchEvent(new Event('pagehide'))
  await vi.advanceTimersByTimeAsync(0)
  expect(shelf.asked).toEqual([3])
  saving.stop()
  await vi.advanceTimersByTimeAsync(1000)
  expect(shelf.asked).toEqual([3])
})
