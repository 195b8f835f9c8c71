import { IDBFactory } from 'fake-indexeddb'
import { createStore, set, type UseStore } from 'idb-keyval'
import { beforeEach, expect, test, vi } from 'vitest'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { openFile } from '../../src/shelf/file'
import { newId, openShelf, type Recovered, type Shelf } from '../../src/shelf/keep'

const named = (title: string): Pattern => ({ ...newPattern(36, 4), title })
let store: UseStore
let minute: number
const now = () => new Date(Date.UTC(2030, 0, 1, 12, minute++))
const openWindow = (): Shelf => openShelf(store, now)

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  store = createStore('pegwright', 'pieces')
  minute = 0
})

test('a kept piece is there after a reload', async () => {
  const pattern = named('Gull cuff')
  expect(await openWindow().keep({ id: 'a', pattern, revision: 7 })).toEqual({
    state: 'kept',
    id: 'a',
    revision: 7,
    date: '2030-01-01T12:00:00.000Z',
  })
  expect(await openWindow().recover()).toEqual({
    state: 'recovered',
    id: 'a',
    pattern,
    revision: 7,
    date: '2030-01-01T12:00:00.000Z',
  })
})

test('an empty shelf has nothing to recover', async () => {
  expect(await openWindow().recover()).toEqual({ state: 'nothing' })
  expect(await openWindow().recover('a')).toEqual({ state: 'nothing' })
})

test('several pieces are listed newest first, and the newest is recovered', async () => {
  const shelf = openWindow()
  await shelf.keep({ id: 'a', pattern: named('First'), revision: 1 })
  await shelf.keep({ id: 'b', pattern: named('Second'), revision: 1 })
  await shelf.keep({ id: 'a', pattern: named('First, longer'), revision: 2 })
  expect(await shelf.list()).toEqual([
    { id: 'a', title: 'First, longer', date: '2030-01-01T12:02:00.000Z' },
    { id: 'b', title: 'Second', date: '2030-01-01T12:01:00.000Z' },
  ])
  expect(await shelf.recover()).toMatchObject({ id: 'a', revision: 2 })
  expect(await shelf.recover('b')).toMatchObject({ pattern: { title: 'Second' } })
  expect(await shelf.remove('a')).toBe(true)
  expect(await shelf.recover()).toMatchObject({ id: 'b' })
})

test('a window does not overwrite what another kept of the same piece', async () => {
  const first = openWindow()
  await first.keep({ id: 'a', pattern: named('Start'), revision: 1 })
  const second = openWindow()
  await second.recover('a')
  await first.keep({ id: 'a', pattern: named('From the first'), revision: 2 })

  const moved = await second.keep({ id: 'a', pattern: named('From the second'), revision: 2 })
  const again = await second.keep({ id: 'a', pattern: named('And on'), revision: 3 })
  await first.keep({ id: 'a', pattern: named('The first goes on'), revision: 3 })
  if (moved.state !== 'kept' || again.state !== 'kept') throw new Error('not kept')
  expect(moved.id).not.toBe('a')
  expect(again.id).toBe(moved.id)
  expect((await first.list()).map(({ title }) => title)).toEqual(['The first goes on', 'And on'])
})

const keptBadly: [what: string, record: unknown, text: string, message: RegExp][] = [
  [
    'broken text',
    { title: 'Torn', revision: 1, date: '2031', keeper: 'x', text: '{"pegwright": 1, "ti' },
    '{"pegwright": 1, "ti',
    /"Torn" cannot be opened\. This Pegwright file is damaged at line 1/,
  ],
  [
    'a newer format',
    { title: 'New', revision: 1, date: '2031', keeper: 'x', text: '{"pegwright": 9}' },
    '{"pegwright": 9}',
    /newer Pegwright .* version 9/,
  ],
  ['another record', [1, 2], '[1,2]', /not one of Pegwright’s pieces/],
]
test.each(keptBadly)(
  '%s is offered as it is and never overwritten',
  async (_, record, text, message) => {
    await set('bad', record, store)
    const shelf = openWindow()
    const found: Recovered = await shelf.recover()
    if (found.state !== 'unreadable') throw new Error(found.state)
    expect(found.id).toBe('bad')
    expect(found.file.text).toBe(text)
    expect(found.message).toMatch(message)
    await shelf.keep({ id: 'bad', pattern: named('Other'), revision: 1 })
    const after = await shelf.recover('bad')
    expect(after).toEqual(found)
    expect(await shelf.list()).toHaveLength(2)
  },
)

const brokenStores: [what: string, store: () => UseStore][] = [
  ['no database at all', () => createStore('none', 'pieces')],
  ['a store that throws', () => () => Promise.reject(new DOMException('full', 'QuotaExceeded'))],
]
test.each(brokenStores)('%s is said, not thrown', async (_, broken) => {
  vi.stubGlobal('indexedDB', undefined)
  const shelf = openShelf(broken(), now)
  expect(await shelf.keep({ id: 'a', pattern: named('X'), revision: 1 })).toMatchObject({
    state: 'not kept',
    message: expect.stringContaining('Save your piece as a file') as string,
  })
  expect(await shelf.recover()).toMatchObject({ state: 'no store' })
  expect(await shelf.list()).toEqual([])
  expect(await shelf.remove('a')).toBe(false)
})

test('ids differ', () => {
  expect(new Set(Array.from({ length: 1000 }, newId)).size).toBe(1000)
})

test('a file of the user is opened, or refused with a reason', async () => {
  const text = '{"pegwright": 99}'
  expect(await openFile(new Blob([text]))).toMatchObject({
    ok: false,
    message: expect.stringContaining('newer one') as string,
  })
  expect(await openFile({ size: 5e8, text: () => Promise.resolve(text) })).toMatchObject({
    ok: false,
    message: expect.stringContaining('This file has 477 MB') as string,
  })
  expect(await openFile({ size: 1, text: () => Promise.reject(new Error('gone')) })).toMatchObject({
    ok: false,
    message: expect.stringContaining('choose it again') as string,
  })
})

test('where the hands are is kept beside the piece, and is no part of its file', async () => {
  const shelf = openWindow()
  const pattern = named('Gull cuff')
  await shelf.keep({ id: 'a', pattern, revision: 1, whereabouts: { row: 3 } })
  expect(await openWindow().recover()).toMatchObject({ revision: 1, whereabouts: { row: 3 } })
  expect(await shelf.keepWhereabouts('a', { row: 9 })).toBe(true)
  expect(await openWindow().recover()).toMatchObject({ pattern, whereabouts: { row: 9 } })
  // It takes nothing from what is kept next.
  expect(await shelf.keep({ id: 'a', pattern, revision: 2 })).toMatchObject({ id: 'a' })
})

test('a place makes no piece, and is not put beside what another window kept', async () => {
  const shelf = openWindow()
  expect(await shelf.keepWhereabouts('a', { row: 1 })).toBe(false)
  expect(await shelf.list()).toEqual([])
  await shelf.keep({ id: 'a', pattern: named('X'), revision: 1 })
  const other = openWindow()
  await other.recover('a')
  await other.keep({ id: 'a', pattern: named('Y'), revision: 2, whereabouts: 'theirs' })
  expect(await shelf.keepWhereabouts('a', 'mine')).toBe(false)
  expect(await openWindow().recover('a')).toMatchObject({ whereabouts: 'theirs' })
})

test('a store that never answers is said after a while', async () => {
  const silent: UseStore = () => new Promise(() => undefined)
  const shelf = openShelf(silent, now, 20)
  const silence = { message: expect.stringContaining('doesn’t answer') as string }
  expect(await shelf.recover()).toMatchObject({ state: 'no store', ...silence })
  expect(await shelf.keep({ id: 'a', pattern: named('X'), revision: 1 })).toMatchObject({
    state: 'not kept',
    ...silence,
  })
  expect(await shelf.list()).toEqual([])
  expect(await shelf.remove('a')).toBe(false)
  expect(await shelf.keepWhereabouts('a', {})).toBe(false)
})

test('what is said of a piece stays when it is kept again; working on it brings it back', async () => {
  const shelf = openWindow()
  await shelf.keep({ id: 'a', pattern: named('First'), revision: 1 })
  await shelf.keep({ id: 'b', pattern: named('Second'), revision: 1 })
  expect(await shelf.say('b', { removed: '2030-02-01', stage: 'finished' })).toBe(true)
  expect(await shelf.say('c', { stage: 'finished' })).toBe(false)
  // A removed piece is not taken up at the next start.
  expect(await openWindow().recover()).toMatchObject({ id: 'a' })
  expect(await shelf.all()).toMatchObject([
    { id: 'b', title: 'Second', stage: 'finished', removed: '2030-02-01' },
    { id: 'a', stage: 'draft', removed: null },
  ])
  await shelf.keep({ id: 'b', pattern: named('Second, longer'), revision: 2 })
  expect(await shelf.all()).toMatchObject([
    { id: 'b', title: 'Second, longer', stage: 'finished', removed: null },
    { id: 'a' },
  ])
})
