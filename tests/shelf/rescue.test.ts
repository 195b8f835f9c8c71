import fc from 'fast-check'
import { expect, test, vi } from 'vitest'
import {
  clearAside,
  fromAside,
  putAside,
  putWhereaboutsAside,
  smallStore as browserStore,
  whereaboutsAside,
  type SmallStore,
} from '../../src/shelf/rescue'
import { newPattern } from '../../src/pattern/pattern'
import { arbitraryPattern } from '../arbitraries'

function smallStore(): SmallStore {
  const items = new Map<string, string>()
  return {
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => void items.set(key, value),
    removeItem: (key) => void items.delete(key),
  }
}

const broken: SmallStore = {
  getItem: () => {
    throw new Error('not allowed')
  },
  setItem: () => {
    throw new Error('full')
  },
  removeItem: () => {
    throw new Error('not allowed')
  },
}

test('what is put aside comes back, until it is cleared', () => {
  const store = smallStore()
  expect(fromAside(store)).toBeNull()
  fc.assert(
    fc.property(arbitraryPattern(), fc.nat(), (pattern, revision) => {
      putAside(store, { id: 'a', revision, pattern })
      expect(fromAside(store)).toEqual({ id: 'a', revision, pattern })
    }),
    { numRuns: 20 },
  )
  clearAside(store)
  expect(fromAside(store)).toBeNull()
})

test('a store that is full, not allowed or spoilt never throws', () => {
  expect(putAside(broken, { id: 'a', revision: 1, pattern: newPattern() })).toBe(false)
  expect(fromAside(broken)).toBeNull()
  expect(() => clearAside(broken)).not.toThrow()
  const spoilt = smallStore()
  spoilt.setItem('pegwright.rescue', '{"id": 3')
  expect(fromAside(spoilt)).toBeNull()
})

test('the place of a piece is put aside for that piece only', () => {
  const store = smallStore()
  putWhereaboutsAside(store, 'a', { row: 4 })
  expect(whereaboutsAside(store, 'a')).toEqual({ row: 4 })
  expect(whereaboutsAside(store, 'b')).toBeUndefined()
  expect(() => putWhereaboutsAside(broken, 'a', {})).not.toThrow()
  expect(whereaboutsAside(broken, 'a')).toBeUndefined()
})

test('where the small store may not even be asked for, there is nothing in it', () => {
  vi.stubGlobal('localStorage', undefined)
  Object.defineProperty(globalThis, 'localStorage', {
    configurable: true,
    get: () => {
      throw new DOMException('Access is denied', 'SecurityError')
    },
  })
  const store = browserStore()
  vi.unstubAllGlobals()
  expect(fromAside(store)).toBeNull()
  expect(putAside(store, { id: 'a', revision: 1, pattern: newPattern() })).toBe(false)
  expect(() => clearAside(store)).not.toThrow()
})
