import { promisifyRequest } from 'idb-keyval'
import { createStore, get, type UseStore } from 'idb-keyval'
import { inTime, patience, whyNotKept } from './answers'

/** Where somebody is who knits a piece: plain data of the screen, beside the piece and no part of its file. */
export interface Knitting {
  /** Keep it at once. null: it is kept; else why not, for the user. */
  readonly keep: (id: string, place: unknown) => Promise<string | null>
  /** null: none was kept, or the store does not answer. */
  readonly recover: (id: string) => Promise<unknown>
  /** Forget the places in a piece. */
  readonly remove: (id: string) => Promise<void>
}

/** The key of the second of a pair, which has a place of its own. */
export const secondKey = (id: string): string => `${id}/second`

/** `time` is how long an answer is waited for, in milliseconds. */
export function openKnitting(
  store: UseStore = createStore('pegwright-knitting', 'places'),
  time = patience,
): Knitting {
  /** All of it is sent at once: a page that ends now has kept it. */
  const send = (write: (entries: IDBObjectStore) => void): Promise<unknown> =>
    store('readwrite', (entries) => {
      write(entries)
      const { transaction } = entries
      const done = promisifyRequest(transaction)
      transaction.commit()
      return done
    })

  return {
    async keep(id, place) {
      try {
        await inTime(
          send((entries) => entries.put(place, id)),
          time,
        )
        return null
      } catch (error) {
        return whyNotKept(error)
      }
    },
    async recover(id) {
      try {
        return (await inTime(get<unknown>(id, store), time)) ?? null
      } catch {
        return null
      }
    },
    async remove(id) {
      try {
        const all = (entries: IDBObjectStore) => {
          entries.delete(id)
          entries.delete(secondKey(id))
        }
        await inTime(send(all), time)
      } catch {
        // A place without a piece does no harm.
      }
    },
  }
}
