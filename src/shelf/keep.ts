/**
 * Keeping work in the browser while it is made. Each piece is one record: its file text and when
 * it was kept. A broken or missing store gives a status with a message and never throws.
 */
import { createStore, del, entries, get, update, type UseStore } from 'idb-keyval'
import * as v from 'valibot'
import type { Pattern } from '../pattern/pattern'
import { fileOf, rawFile, type FileData } from './file'
import { readFile } from './format'

/** A document that is being worked on. */
export interface Piece {
  readonly id: string
  readonly pattern: Pattern
  /** Counts the edits, so that it can be told whether the newest is kept. */
  readonly revision: number
}

export type KeepStatus =
  /** `id` is another than the piece's own when another window had kept it meanwhile. */
  | {
      readonly state: 'kept'
      readonly id: string
      readonly revision: number
      readonly date: string
    }
  | { readonly state: 'not kept'; readonly message: string }

export type Recovered =
  | ({ readonly state: 'recovered'; readonly date: string } & Piece)
  /** Still in the store; `file` is what it holds, for the user to save. */
  | {
      readonly state: 'unreadable'
      readonly id: string
      readonly message: string
      readonly file: FileData
    }
  | { readonly state: 'nothing' }
  | { readonly state: 'no store'; readonly message: string }

export interface Listed {
  readonly id: string
  readonly title: string
  /** ISO 8601; empty when the record does not say. */
  readonly date: string
}

export interface Shelf {
  /** Keep a piece, in place of what this window kept or recovered of it before. */
  readonly keep: (piece: Piece) => Promise<KeepStatus>
  /** The piece of this id; without one, the piece kept last. */
  readonly recover: (id?: string) => Promise<Recovered>
  /** What is kept, newest first; empty without a store. */
  readonly list: () => Promise<readonly Listed[]>
  /** Throw a piece away. False: the store did not answer. */
  readonly remove: (id: string) => Promise<boolean>
}

const recordSchema = v.object({
  title: v.string(),
  revision: v.number(),
  date: v.string(),
  keeper: v.string(),
  text: v.string(),
})
type Kept = v.InferOutput<typeof recordSchema>

const noStore =
  'This browser does not let Pegwright keep work here (a private window or a full disk may be why). Save the chart as a file before you close the page.'

/** An id for a new piece. */
export const newId = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(3)), (part) => part.toString(36)).join('-')

const read = (record: unknown): Kept | null => {
  const result = v.safeParse(recordSchema, record)
  return result.success ? result.output : null
}

const stampOf = (record: unknown): string => {
  const kept = read(record)
  return kept ? `${kept.keeper} ${kept.revision} ${kept.date}` : JSON.stringify(record)
}

/**
 * A shelf on the browser's own database. `now` gives the date of a record.
 *
 * Two windows on one piece: who keeps it second does not overwrite the first; the piece goes on
 * under an id of its own from there.
 */
export function openShelf(
  store: UseStore = createStore('pegwright', 'pieces'),
  now: () => Date = () => new Date(),
): Shelf {
  const keeper = newId()
  const seen = new Map<string, string>()
  const movedTo = new Map<string, string>()

  async function keepAs(id: string, { pattern, revision }: Piece): Promise<KeepStatus | null> {
    const { text } = fileOf(pattern)
    const date = now().toISOString()
    const record: Kept = { title: pattern.title, revision, date, keeper, text }
    let mine = true
    await update(
      id,
      (old: unknown) => {
        mine = old === undefined || stampOf(old) === seen.get(id)
        return mine ? record : old
      },
      store,
    )
    if (!mine) return null
    seen.set(id, stampOf(record))
    return { state: 'kept', id, revision, date }
  }

  return {
    async keep(piece) {
      try {
        const id = movedTo.get(piece.id) ?? piece.id
        const kept = await keepAs(id, piece)
        if (kept) return kept
        const own = newId()
        movedTo.set(piece.id, own)
        return (await keepAs(own, piece)) ?? { state: 'not kept', message: noStore }
      } catch {
        return { state: 'not kept', message: noStore }
      }
    },

    async recover(id) {
      try {
        const wanted = id ?? newestFirst(await entries<string>(store))[0]?.id
        const record: unknown = wanted === undefined ? undefined : await get(wanted, store)
        if (wanted === undefined || record === undefined) return { state: 'nothing' }
        const kept = read(record)
        if (!kept) return unreadable(wanted, kept, record)
        const result = readFile(kept.text)
        if (!result.ok) return unreadable(wanted, kept, record, result.message)
        seen.set(wanted, stampOf(record))
        const { revision, date } = kept
        return { state: 'recovered', id: wanted, pattern: result.pattern, revision, date }
      } catch {
        return { state: 'no store', message: noStore }
      }
    },

    async list() {
      try {
        return newestFirst(await entries<string>(store))
      } catch {
        return []
      }
    },

    async remove(id) {
      try {
        await del(id, store)
        return true
      } catch {
        return false
      }
    },
  }
}

const newestFirst = (records: readonly [string, unknown][]): Listed[] =>
  records
    .map(([id, record]) => {
      const kept = read(record)
      return { id, title: kept?.title ?? 'A piece that cannot be read', date: kept?.date ?? '' }
    })
    .sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))

function unreadable(
  id: string,
  kept: Kept | null,
  record: unknown,
  reason = 'The record is not one of Pegwright.',
): Recovered {
  const title = kept?.title ?? 'unreadable piece'
  return {
    state: 'unreadable',
    id,
    message: `What was kept of "${title}" cannot be opened. ${reason} It is still there: save it as a file.`,
    file: rawFile(title, kept?.text ?? JSON.stringify(record)),
  }
}
