/**
 * Earlier versions of pieces: how a piece was when work on it began, every some minutes of work, and
 * whatever somebody gave a name. Undo takes single steps back; these go further, and stay.
 */
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval'
import * as v from 'valibot'
import { inTime, patience } from './answers'

export interface PieceVersion {
  /** When it was so; ISO 8601. It names the version within its piece. */
  readonly date: string
  /** A version with a name stays until it is removed. */
  readonly name: string | null
  /** What was done last. */
  readonly label: string
  /** Its file. */
  readonly text: string
}

export interface Versions {
  /** Keep a version; one that is the same as the last one is not kept again, but gets the name. False: not kept. */
  readonly add: (id: string, version: PieceVersion) => Promise<boolean>
  /** Those of a piece, newest first; empty without a store. */
  readonly list: (id: string) => Promise<readonly PieceVersion[]>
  readonly remove: (id: string, date: string) => Promise<boolean>
  /** All of a piece are gone. */
  readonly removeAll: (id: string) => Promise<boolean>
}

/** So many versions without a name are kept of a piece; of more, the oldest go. */
export const mostUnnamed = 40

const schema = v.object({
  date: v.string(),
  name: v.nullable(v.string()),
  label: v.string(),
  text: v.string(),
})

const allOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, ''], [id, []])

export function openVersions(
  store: UseStore = createStore('pegwright-versions', 'versions'),
  time = patience,
): Versions {
  const attempt = async (work: () => Promise<unknown>): Promise<boolean> => {
    try {
      await inTime(work(), time)
      return true
    } catch {
      return false
    }
  }
  async function readAll(entries: IDBObjectStore, id: string): Promise<PieceVersion[]> {
    const found = await promisifyRequest<unknown[]>(entries.getAll(allOf(id)))
    return found
      .flatMap((entry) => {
        const read = v.safeParse(schema, entry)
        return read.success ? [read.output] : []
      })
      .toReversed()
  }

  return {
    add: (id, version) =>
      attempt(() =>
        store('readwrite', async (entries) => {
          const [last, ...older] = await readAll(entries, id)
          const isSame = last?.text === version.text
          if (isSame && (version.name === null || last.name !== null)) return
          if (isSame) entries.delete([id, last.date])
          const unnamed = [...(last ? [last] : []), ...older].filter(({ name }) => name === null)
          for (const { date } of unnamed.slice(mostUnnamed - 1)) entries.delete([id, date])
          entries.put(version, [id, version.date])
          await promisifyRequest(entries.transaction)
        }),
      ),

    async list(id) {
      try {
        return await inTime(
          store('readonly', (entries) => readAll(entries, id)),
          time,
        )
      } catch {
        return []
      }
    },

    remove: (id, date) =>
      attempt(() => store('readwrite', (entries) => promisifyRequest(entries.delete([id, date])))),

    removeAll: (id) =>
      attempt(() => store('readwrite', (entries) => promisifyRequest(entries.delete(allOf(id))))),
  }
}
