import { IDBFactory } from 'fake-indexeddb'
import { createStore, type UseStore } from 'idb-keyval'
import { beforeEach, expect, test, vi } from 'vitest'
import { openKnitting, secondKey } from '../../src/shelf/knitting'

let store: UseStore
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  store = createStore('places', 'places')
})

test('a place is kept, and is there for another page', async () => {
  expect(await openKnitting(store).keep('a', { stop: 3, prints: Uint32Array.of(1, 2) })).toBeNull()
  expect(await openKnitting(store).recover('a')).toEqual({ stop: 3, prints: Uint32Array.of(1, 2) })
  expect(await openKnitting(store).recover('b')).toBeNull()
})

test('with a piece goes its place, and that of its second', async () => {
  const knitting = openKnitting(store)
  for (const id of ['a', secondKey('a'), 'b']) await knitting.keep(id, { id })
  await knitting.remove('a')
  expect(await knitting.recover('a')).toBeNull()
  expect(await knitting.recover(secondKey('a'))).toBeNull()
  expect(await knitting.recover('b')).toEqual({ id: 'b' })
})

test('a store that refuses, or is silent, is told of and never throws', async () => {
  const full: UseStore = () => Promise.reject(new DOMException('', 'QuotaExceededError'))
  const silent: UseStore = () => new Promise(() => undefined)
  expect(await openKnitting(full).keep('a', {})).toContain('no room left')
  expect(await openKnitting(silent, 5).keep('a', {})).toContain('doesn’t answer')
  expect(await openKnitting(full).recover('a')).toBeNull()
  await openKnitting(full).remove('a')
})
