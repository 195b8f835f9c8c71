/**
 * The last edits before a page goes. The browser's database answers later than the page may live,
 * so what is not kept yet when the page is hidden is also put into the small store that answers at
 * once, and is taken from there at the next start.
 */
import * as v from 'valibot'
import type { KeptPiece } from './keep'
import { readFile, writeFile } from './format'

/** What is needed of localStorage. */
export type SmallStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

const key = 'pegwright.rescue'
const schema = v.object({ id: v.string(), revision: v.number(), text: v.string() })

/** Put a piece aside at once. False: the store is full or not allowed. */
export function putAside(store: SmallStore, { id, revision, pattern }: KeptPiece): boolean {
  try {
    store.setItem(key, JSON.stringify({ id, revision, text: writeFile(pattern) }))
    return true
  } catch {
    return false
  }
}

/** What a page that may not use the small store has instead: nothing is there, nothing is taken. */
const forbidden: SmallStore = {
  getItem: () => null,
  setItem: () => {
    throw new DOMException('The small store is not allowed.', 'SecurityError')
  },
  removeItem: () => undefined,
}

const ifAllowed = (store: () => SmallStore): SmallStore => {
  try {
    return store()
  } catch {
    return forbidden
  }
}

/** The browser's small store; asking for it throws where it is not allowed. */
export const smallStore = (): SmallStore => ifAllowed(() => localStorage)
/** The same for one window: it is there after a reload, and other windows have their own. */
export const windowStore = (): SmallStore => ifAllowed(() => sessionStorage)

const pieceKey = 'pegwright.piece'

/** Note the id of the piece that this window works on. */
export function putOwnPiece(store: SmallStore, id: string): void {
  try {
    store.setItem(pieceKey, id)
  } catch {
    // After a reload the window takes up the piece that was kept last.
  }
}

/** The piece that this window worked on before a reload. */
export const ownPiece = (store: SmallStore): string | undefined =>
  store.getItem(pieceKey) ?? undefined

const placeKey = 'pegwright.whereabouts'

/** Put aside at once where the hands are in the piece of this id. */
export function putWhereaboutsAside(store: SmallStore, id: string, whereabouts: unknown): void {
  try {
    store.setItem(placeKey, JSON.stringify({ id, whereabouts }))
  } catch {
    // The place is then the one that was kept with the piece.
  }
}

/** Where the hands were in the piece of this id; undefined when it was not put aside. */
export function whereaboutsAside(store: SmallStore, id: string): unknown {
  try {
    const aside = JSON.parse(store.getItem(placeKey) ?? 'null') as unknown
    const read = v.safeParse(v.object({ id: v.string(), whereabouts: v.unknown() }), aside)
    return read.success && read.output.id === id ? read.output.whereabouts : undefined
  } catch {
    return undefined
  }
}

/** The piece that was put aside; null for none, or one that cannot be read. */
export function fromAside(store: SmallStore): KeptPiece | null {
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
