/** All pieces in one file, and back. */
import * as v from 'valibot'
import { fileStem, readFile, writeFile } from './format'
import type { FileData, Opened } from './file'
import { stages, type OnShelf } from './keep'
import type { PieceVersion } from './versions'

/** A piece in an archive. */
export interface Archived extends Omit<OnShelf, 'id' | 'text'> {
  readonly id: string
  readonly text: string
  readonly versions: readonly PieceVersion[]
}

/** Of an archive: bytes, and pieces. */
export const archiveLimits = { bytes: 64 * 1024 * 1024, pieces: 1000, versions: 500 }

const format = 'pegwright archive'

const versionSchema = v.object({
  date: v.string(),
  name: v.nullable(v.string()),
  label: v.string(),
  file: v.unknown(),
})
const pieceSchema = v.object({
  id: v.string(),
  date: v.string(),
  stage: v.picklist(stages),
  removed: v.nullable(v.string()),
  file: v.unknown(),
  versions: v.pipe(v.array(versionSchema), v.maxLength(archiveLimits.versions)),
})
const schema = v.object({
  [format]: v.literal(1),
  pieces: v.pipe(v.array(v.unknown()), v.maxLength(archiveLimits.pieces)),
})

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** `date` ISO 8601: it stands in the name of the file. */
export function archiveOf(pieces: readonly Archived[], date: string): FileData {
  const inFile = pieces.map(({ text, versions, id, date: at, stage, removed }) => ({
    ...{ id, date: at, stage, removed, file: parsed(text) },
    versions: versions.map(({ text: file, ...told }) => ({ ...told, file: parsed(file) })),
  }))
  return {
    name: `${fileStem({ title: `my pieces ${date.slice(0, 10)}` })}.json`,
    type: 'application/json',
    text: JSON.stringify({ [format]: 1, pieces: inFile }, null, 1),
  }
}

export type ReadArchive =
  | {
      readonly ok: true
      readonly pieces: readonly Archived[]
      /** How many pieces could not be read. */
      readonly unread: number
    }
  | { readonly ok: false; readonly message: string }

const refused = (message: string): ReadArchive => ({ ok: false, message })

/** Read an archive. Never throws; the message is for the user. Each piece is held to what a file is held to. */
export async function readArchive(file: Opened): Promise<ReadArchive> {
  const megabytes = (bytes: number) => Math.ceil(bytes / 1024 / 1024)
  if (file.size > archiveLimits.bytes)
    return refused(
      `This file has ${megabytes(file.size)} MB; pieces are brought back from files of up to ${megabytes(archiveLimits.bytes)} MB.`,
    )
  const value = parsed(await file.text().catch(() => ''))
  const tooMany = many(value)
  if (tooMany > archiveLimits.pieces)
    return refused(
      `This file has ${tooMany} pieces; at most ${archiveLimits.pieces} are brought back from one file.`,
    )
  const whole = v.safeParse(schema, value)
  if (!whole.success)
    return refused('This is no file of all pieces, as “Save all as one file” makes it.')
  const pieces: Archived[] = []
  for (const entry of whole.output.pieces) {
    const piece = pieceOf(entry)
    if (piece) pieces.push(piece)
    // Others have their turn: a large archive takes a while.
    await new Promise((resolve) => setTimeout(resolve))
  }
  return { ok: true, pieces, unread: whole.output.pieces.length - pieces.length }
}

function many(value: unknown): number {
  const pieces = v.safeParse(v.object({ pieces: v.array(v.unknown()) }), value)
  return pieces.success ? pieces.output.pieces.length : 0
}

function pieceOf(entry: unknown): Archived | null {
  const read = v.safeParse(pieceSchema, entry)
  if (!read.success) return null
  const { file, versions, ...told } = read.output
  const result = readFile(JSON.stringify(file))
  if (!result.ok) return null
  const good = versions.flatMap(({ file: of, ...version }) => {
    const was = readFile(JSON.stringify(of))
    return was.ok ? [{ ...version, text: writeFile(was.pattern) }] : []
  })
  const { pattern } = result
  return { ...told, title: pattern.title, text: writeFile(pattern), versions: good }
}
