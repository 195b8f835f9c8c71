/**
 * The last edits before a page goes. The browser's database answers later than the page may live,
 * so what is not kept yet when the page is hidden is also put into the small store that answers at
 * once, and is taken from there at the next start.
 */
import * as v from 'valibot'
import type { Piece } from './keep'
import { readFile, writeFile } from './format'

/** What is needed of localStorage. */
export type SmallStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

const key = 'pegwright.rescue'
const schema = v.object({ id: v.string(), revision: v.number(), text: v.string() })

/** Put a piece aside at once. False: the store is full or not allowed. */
export function putAside(store: SmallStore, { id, revision, pattern }: Piece): boolean {
  try {
    store.setItem(key, JSON.stringify({ id, revision, text: writeFile(pattern) }))
    return true
  } catch {
    return false
  }
}

/** The piece that was put aside; null for none, or one that cannot be read. */
export function fromAside(store: SmallStore): Piece | null {
  try {
    const result = v.safeParse(schema, JSON.parse(store.getItem(key) ?? 'null'))
    if (!result.success) return null
    const { id, revision, text } = result.output
    const read = readFile(text)
    return read.ok ? { id, revision, pattern: read.pattern } : null
  } catch {
    return null
  }
}

/** Nothing is put aside any more: it is kept. */
export function clearAside(store: SmallStore): void {
  try {
    store.removeItem(key)
  } catch {
    // A store that is not allowed holds nothing.
  }
}
