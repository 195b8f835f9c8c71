import { IDBFactory, IDBKeyRange } from 'fake-indexeddb'
import { createStore, del, keys, set, type UseStore } from 'idb-keyval'
import { beforeEach, expect, test, vi } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { add, begin, redo, undo, type History } from '../../src/pattern/history'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { openJournal, type Journal } from '../../src/shelf/journal'
import { standardVocabulary } from '../../src/stitches/vocabulary'

const purl = standardVocabulary.withRole('purl')
let store: UseStore
let journal: Journal
let revision: number

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  vi.stubGlobal('IDBKeyRange', IDBKeyRange)
  store = createStore('steps', 'steps')
  journal = openJournal(store)
  revision = 0
})

const first: Pattern = newPattern(36, 4)
const put = (history: History, pattern: Pattern, label: string, gesture: string | null = null) =>
  add(history, { pattern, from: 'Chart', on: 'Chart', label, spot: { row: 1, peg: 2 }, gesture })
const painted = (history: History, column: number, gesture: string | null = null) =>
  put(history, paint(history.present.pattern, purl, 1, column), `Purl ${column}`, gesture)

/** Each of these histories is written down, one after the other; the last of them. */
async function note(...histories: History[]): Promise<History> {
  for (const history of histories) expect(await journal.note('a', ++revision, history)).toBe(true)
  return histories.at(-1) as History
}
/** Another page on the same store. */
const taken = async () => (await openJournal(store).read())?.history

/** A history without what only this page knows of it. */
const kept = ({ past, present, future, on }: History) => ({
  past: past.map((version) => ({ ...version, gesture: null })),
  present: { ...present, gesture: null },
  future: future.map((version) => ({ ...version, gesture: null })),
  on,
})

test('the work is there with all that can be taken back and done again', async () => {
  const start = begin(first)
  const one = painted(start, 3)
  const two = painted(one, 4)
  const back = undo(two)
  await note(start, one, two, back)
  expect(await taken()).toEqual(kept(back))
  expect(redo((await taken()) as History).present.pattern).toEqual(two.present.pattern)
  expect(await openJournal(store).read()).toMatchObject({ id: 'a', revision: 4 })
})

test('what is done after going back takes the place of what was taken back', async () => {
  const start = begin(first)
  const two = painted(painted(start, 3), 4)
  const other = painted(undo(undo(two)), 9)
  await note(start, two, undo(two), other)
  expect(await taken()).toEqual(kept(other))
  expect((await keys(store)).length).toBe(2 + 2)
})

test('a gesture that goes on is one step', async () => {
  const start = begin(first)
  const drag = painted(start, 3, 'g')
  const on = painted(drag, 4, 'g')
  await note(start, drag, on)
  expect((await taken())?.past).toHaveLength(1)
  expect(await taken()).toEqual(kept(on))
})

test('what the history holds from before the piece came is not its own', async () => {
  const start = painted(begin(first), 3)
  await journal.note('before', 1, start)
  const other = put(start, newPattern(24, 2), 'Open another')
  await journal.note('a', 1, other, 2)
  await note(painted(other, 1))
  const history = (await taken()) as History
  expect(history.past.map(({ label }) => label)).toEqual(['Open another'])
  expect(history.present.pattern.loom.pegs).toBe(24)
})

test('back before the piece, the one that is there begins anew', async () => {
  const start = begin(first)
  const other = put(start, newPattern(24, 2), 'Open another')
  await journal.note('a', 1, other, 1)
  expect(await journal.note('a', 2, undo(other), 1)).toBe(true)
  expect(await taken()).toEqual({
    ...kept(undo(other)),
    future: [{ ...other.present, gesture: null }],
  })
})

test('the piece as it came is written with its first change', async () => {
  const one = painted(begin(first), 3)
  await note(one)
  expect(undo((await taken()) as History).present.pattern).toEqual(first)
})

test('of a very long history the last part is kept', async () => {
  let history = begin(first)
  await note(history)
  for (let n = 0; n < 700; n++) {
    history = painted(history, n % 2 === 0 ? 3 : 4, null)
    if (history.past.length < n + 1)
      history = put(
        history,
        paint(history.present.pattern, standardVocabulary.withRole('knit'), 1, 3),
        `${n}`,
      )
    await note(history)
  }
  const found = (await taken()) as History
  expect(found.past.length).toBeGreaterThanOrEqual(300)
  expect(found.past.length).toBeLessThanOrEqual(600)
  expect(found.present).toEqual({ ...history.present, gesture: null })
  expect(found.past).toEqual(kept(history).past.slice(-found.past.length))
})

/** A step as the journal holds it. */
const stepOf = (delta: unknown) => ({
  label: '',
  from: '',
  on: '',
  spot: { row: 0, peg: 0 },
  delta,
})

test.each([
  ['nothing', async () => del('last', store)],
  ['a head that is none', async () => set(['a', 'head'], { revision: 'x' }, store)],
  ['a version that is missing', async () => del(['a', 1], store)],
  [
    'a difference of another piece',
    async () => set(['a', 1], stepOf({ at: 0, take: 1, put: [] }), store),
  ],
  [
    'a piece that no file may hold',
    async () => set(['a', 1], stepOf({ keys: { pace: { is: -5 } } }), store),
  ],
] as const)('with %s nothing is taken up', async (_, spoil) => {
  const start = begin(first)
  await note(start, painted(start, 3))
  await spoil()
  expect(await openJournal(store).read()).toBeNull()
})

test('each of several pieces is read by its id, the last one without', async () => {
  const start = begin(first)
  await journal.note('b', 1, painted(start, 5))
  await note(painted(start, 3))
  expect((await openJournal(store).read('b'))?.history.present.label).toBe('Purl 5')
  expect((await openJournal(store).read())?.id).toBe('a')
  expect(await openJournal(store).read('c')).toBeNull()
})

test('a removed piece is gone, others are not', async () => {
  await journal.note('b', 1, begin(first))
  await note(begin(first))
  expect(await journal.remove('a')).toBe(true)
  expect(await openJournal(store).read()).toBeNull()
  expect((await keys(store)).filter((key) => key !== 'last')).toEqual([
    ['b', 0],
    ['b', 'head'],
  ])
})

test('a store that refuses is said, and all is written when it takes again', async () => {
  let refuses = true
  const sometimes: UseStore = (mode, callback) =>
    refuses ? Promise.reject(new DOMException('full', 'QuotaExceededError')) : store(mode, callback)
  const wary = openJournal(sometimes)
  const start = begin(first)
  expect(await wary.note('a', 1, start)).toBe(false)
  refuses = false
  const one = painted(start, 3)
  expect(await wary.note('a', 2, one)).toBe(true)
  expect((await taken())?.present.pattern).toEqual(one.present.pattern)
})
