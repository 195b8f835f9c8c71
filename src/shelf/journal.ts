/**
 * Each step of the work, written down as it is done: what is there after the page was closed or died,
 * with all that can be taken back. The shelf keeps whole pieces a moment later; this keeps what an edit
 * changed, so that it is quick however large the piece is.
 *
 * For a piece the store holds versions by number, the first of them whole and each other one as its
 * difference from the one before, and a head that says which of them is the present one.
 */
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval'
import * as v from 'valibot'
import type { History, Version } from '../pattern/history'
import type { Pattern } from '../pattern/pattern'
import { inTime, patience } from './answers'
import { deltaBetween, withDelta, type Delta } from './delta'
import { readFile, writeFile } from './format'
import { version as fileVersion } from './formatVersions'

/** What was written down of a piece. */
export interface Written {
  readonly id: string
  readonly revision: number
  /** When the last of it was written; ISO 8601. */
  readonly date: string
  readonly history: History
}

export interface Journal {
  /**
   * Write down what is new in the history of this piece. What the history holds from before the
   * piece came, which is its version `came`, is not its own and is left out. False: it was not written.
   */
  readonly note: (id: string, revision: number, history: History, came?: number) => Promise<boolean>
  /**
   * What was written of this piece, to go on from; without an id, of the one that was worked on last. Null for none
   * that can be read.
   */
  readonly read: (id?: string) => Promise<Written | null>
  /** What was written of this piece is gone. False: it could not be removed. */
  readonly remove: (id: string) => Promise<boolean>
}

/** When there are more versions than `most`, only the last `least` are kept. */
const limits = { most: 600, least: 300 }

const headKey = 'head'
const lastKey = 'last'

const headSchema = v.object({
  file: v.literal(fileVersion),
  revision: v.number(),
  date: v.string(),
  base: v.number(),
  present: v.number(),
  end: v.number(),
  on: v.string(),
})
type Head = v.InferOutput<typeof headSchema>

const versionSchema = v.object({
  label: v.string(),
  from: v.string(),
  on: v.string(),
  spot: v.object({ row: v.number(), peg: v.number() }),
  /** The whole file of the first version; of any other what differs from the one before. */
  text: v.optional(v.string()),
  delta: v.optional(v.unknown()),
})
type WrittenVersion = v.InferOutput<typeof versionSchema>

/** What this window has written of the piece on its bench. */
interface Noted {
  readonly id: string
  /** Number of the first version, and its place in the history of the bench. */
  readonly base: number
  readonly place: number
  readonly versions: readonly Version[]
}

const same = (a: Version | undefined, b: Version | undefined): boolean =>
  a !== undefined && b !== undefined && a.pattern === b.pattern && a.label === b.label

/** `now` gives the date; `time` is how long an answer is waited for, in milliseconds. */
export function openJournal(
  store: UseStore = createStore('pegwright-steps', 'steps'),
  now: () => Date = () => new Date(),
  time = patience,
): Journal {
  let noted: Noted | null = null

  /** Send all of it at once, and do not wait for one answer before the end is sent. */
  const send = (write: (entries: IDBObjectStore) => void): Promise<unknown> =>
    store('readwrite', (entries) => {
      write(entries)
      const { transaction } = entries
      const done = promisifyRequest(transaction)
      transaction.commit()
      return done
    })

  return {
    async note(id, revision, history, came = 0) {
      const before = noted?.id === id ? noted : null
      const after = (noted = notedNext(before, id, history, came))
      const { base, versions } = after
      const wasBase = before?.base === base ? before : null
      const from = wasBase ? firstNew(wasBase.versions, versions) : 0
      const head: Head = {
        file: fileVersion,
        revision,
        date: now().toISOString(),
        base,
        present: base + history.past.length - after.place,
        end: base + versions.length - 1,
        on: history.on,
      }
      try {
        await inTime(
          send((entries) => {
            if (!wasBase) entries.delete(allOf(id))
            for (const [index, version] of versions.entries())
              if (index >= from)
                entries.put(written(version, versions[index - 1]), [id, base + index])
            if (wasBase) entries.delete(IDBKeyRange.bound([id, head.end + 1], [id, Infinity]))
            entries.put(head, [id, headKey])
            entries.put(id, lastKey)
          }),
          time,
        )
        return true
      } catch {
        noted = null
        return false
      }
    },

    async read(wanted) {
      try {
        return await inTime(
          store('readonly', async (entries) => {
            const id: unknown = wanted ?? (await promisifyRequest(entries.get(lastKey)))
            if (typeof id !== 'string') return null
            const all = promisifyRequest<unknown[]>(
              entries.getAll(IDBKeyRange.bound([id, -Infinity], [id, Infinity])),
            )
            const head = v.parse(headSchema, await promisifyRequest(entries.get([id, headKey])))
            const found = readAll(id, head, await all)
            if (found) {
              const { past, present, future } = found.history
              noted = { id, base: head.base, place: 0, versions: [...past, present, ...future] }
            }
            return found
          }),
          time,
        )
      } catch {
        return null
      }
    },

    async remove(id) {
      try {
        await inTime(
          send((entries) => entries.delete(allOf(id))),
          time,
        )
        return true
      } catch {
        return false
      }
    },
  }
}

const allOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, -Infinity], [id, []])

/** The versions that are written after this: as before and on, or anew from the present one. */
function notedNext(before: Noted | null, id: string, history: History, came: number): Noted {
  const { past, present, future } = history
  const all = [...past, present, ...future]
  if (!before || past.length < before.place) {
    const place = Math.min(came, past.length)
    return { id, base: 0, place, versions: all.slice(place) }
  }
  const { base, place } = before
  const versions = all.slice(place)
  const tooMany = versions.length > limits.most ? past.length - limits.least - place : 0
  return tooMany > 0
    ? { id, base: base + tooMany, place: place + tooMany, versions: versions.slice(tooMany) }
    : { id, base, place, versions }
}

/** A history changes at its end: the first version that is not the one that was there. */
function firstNew(before: readonly Version[], after: readonly Version[]): number {
  let at = Math.min(before.length, after.length)
  while (at > 0 && !same(before[at - 1], after[at - 1])) at--
  return at
}

function written(version: Version, previous: Version | undefined): WrittenVersion {
  const { pattern, label, from, on, spot } = version
  const { row, peg } = spot
  const told = { label, from, on, spot: { row, peg } }
  return previous
    ? { ...told, delta: deltaBetween(previous.pattern, pattern, pattern.vocabulary) }
    : { ...told, text: writeFile(pattern) }
}

function readAll(id: string, head: Head, entries: readonly unknown[]): Written | null {
  const { base, present, end, on, revision, date } = head
  if (entries.length !== end - base + 1) return null
  const versions: Version[] = []
  for (const entry of entries) {
    const { text, delta, ...told } = v.parse(versionSchema, entry)
    const pattern = text === undefined ? next(versions.at(-1), delta) : read(text)
    if (!pattern) return null
    versions.push({ ...told, pattern, gesture: null })
  }
  const now = versions[present - base]
  // What is put together from differences is held to what a file is held to.
  if (!now || !readFile(writeFile(now.pattern)).ok) return null
  const history: History = {
    past: versions.slice(0, present - base),
    present: now,
    future: versions.slice(present - base + 1),
    on,
  }
  return { id, revision, date, history }
}

function read(text: string): Pattern | null {
  const result = readFile(text)
  return result.ok ? result.pattern : null
}

function next(previous: Version | undefined, delta: unknown): Pattern | null {
  if (!previous || delta === null) return previous?.pattern ?? null
  const { pattern } = previous
  return withDelta(pattern, delta as Delta, pattern.vocabulary) as Pattern
}
