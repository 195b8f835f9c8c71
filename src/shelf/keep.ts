/**
 * Keeping work in the browser while it is made. Each piece is one record: its file text, when it
 * was kept, and where in it the hands were. A store that is broken, missing or silent gives a
 * status with a message and never throws.
 */
import { createStore, del, entries, get, update, type UseStore } from 'idb-keyval'
import * as v from 'valibot'
import { inQuotes } from '../pattern/excerpt'
import type { Pattern } from '../pattern/pattern'
import { inTime, patience, whyNotKept } from './answers'
import { fileOf, rawFile, type FileData } from './file'
import { readFile } from './format'

/** A document that is being worked on. */
export interface KeptPiece {
  readonly id: string
  readonly pattern: Pattern
  /** Counts the edits, so that it can be told whether the newest is kept. */
  readonly revision: number
  /** Where in it the hands are: plain data of the screen, no part of its file. */
  readonly whereabouts?: unknown
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
  | ({ readonly state: 'recovered'; readonly date: string } & KeptPiece)
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

/** What the owner says of a piece: no part of its file. */
export const stages = ['draft', 'on the loom', 'finished'] as const
export type Stage = (typeof stages)[number]

/** A piece as it lies on the shelf. */
export interface OnShelf extends Listed {
  readonly stage: Stage
  /** When it was removed, ISO 8601; null: it was not. */
  readonly removed: string | null
  /** Its file, as it was kept. */
  readonly text: string
}

/** What is said of a piece beside its work. */
export type Said = Partial<Pick<OnShelf, 'stage' | 'removed'>>

export interface Shelf {
  /** Keep a piece, in place of what this window kept or recovered of it before. */
  readonly keep: (piece: KeptPiece) => Promise<KeepStatus>
  /** The piece of this id; without one, the piece kept last. */
  readonly recover: (id?: string) => Promise<Recovered>
  /** What is kept, newest first; empty without a store. */
  readonly list: () => Promise<readonly Listed[]>
  /** All pieces, removed ones too, newest first. Null: the store does not answer. */
  readonly all: () => Promise<readonly OnShelf[] | null>
  /** Say something of a piece that is kept, beside its work. False: it was not kept. */
  readonly say: (id: string, said: Said) => Promise<boolean>
  /** Keep where the hands are in a piece that is kept already. False: it was not kept. */
  readonly keepWhereabouts: (id: string, whereabouts: unknown) => Promise<boolean>
  /** Remove a piece. False: it was not removed. */
  readonly remove: (id: string) => Promise<boolean>
}

const recordSchema = v.object({
  title: v.string(),
  revision: v.number(),
  date: v.string(),
  keeper: v.string(),
  text: v.string(),
  whereabouts: v.optional(v.unknown()),
  stage: v.optional(v.fallback(v.picklist(stages), 'draft'), 'draft'),
  removed: v.optional(v.nullable(v.string()), null),
})
type Kept = v.InferOutput<typeof recordSchema>

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
 * A shelf on the browser's own database. `now` gives the date of a record; `time` is how long an
 * answer is waited for, in milliseconds.
 *
 * Two windows on one piece: who keeps it second does not overwrite the first; the piece goes on
 * under an id of its own from there.
 */
export function openShelf(
  store: UseStore = createStore('pegwright', 'pieces'),
  now: () => Date = () => new Date(),
  time = patience,
): Shelf {
  const keeper = newId()
  const seen = new Map<string, string>()
  const movedTo = new Map<string, string>()

  async function keepAs(
    id: string,
    { pattern, revision, whereabouts }: KeptPiece,
  ): Promise<KeepStatus | null> {
    const { text } = fileOf(pattern)
    const date = now().toISOString()
    // What is worked on again is removed no more.
    const record: Kept = {
      ...{ title: pattern.title, revision, date, keeper, text, whereabouts },
      ...{ stage: 'draft', removed: null },
    }
    let mine = true
    await update(
      id,
      (old: unknown) => {
        mine = old === undefined || stampOf(old) === seen.get(id)
        return mine ? { ...record, stage: read(old)?.stage ?? 'draft' } : old
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
        const kept = await inTime(keepAs(id, piece), time)
        if (kept) return kept
        const own = newId()
        movedTo.set(piece.id, own)
        const moved = await inTime(keepAs(own, piece), time)
        return moved ?? { state: 'not kept', message: whyNotKept(null) }
      } catch (error) {
        return { state: 'not kept', message: whyNotKept(error) }
      }
    },

    async keepWhereabouts(id, whereabouts) {
      const own = movedTo.get(id) ?? id
      let found = false
      const put = (old: unknown) => {
        found = read(old) !== null && stampOf(old) === seen.get(own)
        return found ? { ...(old as Kept), whereabouts } : old
      }
      try {
        // An entry that is not there must not be made.
        if ((await inTime(get(own, store), time)) === undefined) return false
        await inTime(update(own, put, store), time)
        return found
      } catch {
        return false
      }
    },

    async recover(id) {
      try {
        const isThere = ([, record]: readonly [string, unknown]) => !read(record)?.removed
        const wanted =
          id ?? newestFirst((await inTime(entries<string>(store), time)).filter(isThere))[0]?.id
        const record: unknown =
          wanted === undefined ? undefined : await inTime(get(wanted, store), time)
        if (wanted === undefined || record === undefined) return { state: 'nothing' }
        const kept = read(record)
        if (!kept) return unreadable(wanted, kept, record)
        const result = readFile(kept.text)
        if (!result.ok) return unreadable(wanted, kept, record, result.message)
        seen.set(wanted, stampOf(record))
        const { revision, date, whereabouts } = kept
        const { pattern } = result
        return {
          state: 'recovered',
          id: wanted,
          pattern,
          revision,
          date,
          ...(whereabouts !== undefined && { whereabouts }),
        }
      } catch (error) {
        return { state: 'no store', message: whyNotKept(error) }
      }
    },

    async list() {
      try {
        return newestFirst(await inTime(entries<string>(store), time))
      } catch {
        return []
      }
    },

    async all() {
      try {
        const records = await inTime(entries<string>(store), time)
        const byId = new Map(records)
        return newestFirst(records).map((listed): OnShelf => {
          const record: unknown = byId.get(listed.id)
          const kept = read(record)
          const { stage = 'draft', removed = null, text = JSON.stringify(record) } = kept ?? {}
          return { ...listed, stage, removed, text }
        })
      } catch {
        return null
      }
    },

    async say(id, said) {
      let found = false
      try {
        const put = (old: unknown) => {
          found = read(old) !== null
          return found ? { ...(old as Kept), ...said } : old
        }
        if ((await inTime(get(id, store), time)) === undefined) return false
        await inTime(update(id, put, store), time)
        return found
      } catch {
        return false
      }
    },

    async remove(id) {
      try {
        await inTime(del(id, store), time)
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
  reason = 'It is not one of Pegwright’s pieces.',
): Recovered {
  const title = kept?.title ?? 'unreadable piece'
  return {
    state: 'unreadable',
    id,
    message: `${inQuotes(title)} cannot be opened. ${reason} It is still kept: save it as a file.`,
    file: rawFile(title, kept?.text ?? JSON.stringify(record)),
  }
}
