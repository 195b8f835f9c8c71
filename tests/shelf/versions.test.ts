import { IDBFactory, IDBKeyRange } from 'fake-indexeddb'
import { createStore } from 'idb-keyval'
import { beforeEach, expect, test, vi } from 'vitest'
import { mostUnnamed, openVersions, type Versions } from '../../src/shelf/versions'

let versions: Versions
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  vi.stubGlobal('IDBKeyRange', IDBKeyRange)
  versions = openVersions(createStore('pegwright-versions', 'versions'))
})
const at = (minute: number) => new Date(Date.UTC(2030, 0, 1, 12, minute)).toISOString()
const version = (minute: number, text: string, name: string | null = null) => ({
  ...{ date: at(minute), name, label: 'Paint', text },
})
const dates = async (id: string) => (await versions.list(id)).map(({ date }) => date)

test('versions of a piece are listed newest first, each piece by itself', async () => {
  await versions.add('a', version(1, 'one'))
  await versions.add('a', version(2, 'two'))
  await versions.add('ab', version(3, 'other'))
  expect(await dates('a')).toEqual([at(2), at(1)])
  expect(await versions.removeAll('a')).toBe(true)
  expect([await dates('a'), await dates('ab')]).toEqual([[], [at(3)]])
})

test('what is the same as the last version is not kept again, but takes a name', async () => {
  await versions.add('a', version(1, 'one'))
  await versions.add('a', version(2, 'one'))
  expect(await dates('a')).toEqual([at(1)])
  await versions.add('a', version(3, 'one', 'For review'))
  await versions.add('a', version(4, 'one'))
  expect(await versions.list('a')).toEqual([version(3, 'one', 'For review')])
})

test('of versions without a name the oldest go; those with a name stay until they are removed', async () => {
  await versions.add('a', version(0, 'named', 'For review'))
  for (let minute = 1; minute <= mostUnnamed + 5; minute++)
    await versions.add('a', version(minute, `text ${minute}`))
  const kept = await dates('a')
  expect(kept).toHaveLength(mostUnnamed + 1)
  expect(kept.at(-1)).toBe(at(0))
  expect(kept.at(-2)).toBe(at(6))
  await versions.remove('a', at(0))
  expect(await dates('a')).toHaveLength(mostUnnamed)
})

test('without a store nothing is kept, and nothing is thrown', async () => {
  const broken = openVersions(() => Promise.reject(new Error('refused')))
  expect(await broken.add('a', version(1, 'one'))).toBe(false)
  expect(await broken.list('a')).toEqual([])
})
