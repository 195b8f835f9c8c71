import { dirname } from 'node:path'
import { closeSync, fstatSync, openSync, readSync, statSync, writeFileSync } from 'node:fs'
import type { Pattern } from '../pattern/pattern'
import { largestFile } from '../shelf/file'
import { readFile } from '../shelf/format'
import { Unusable } from './call'
import { decode } from './decode'

/** Bytes of words: room for all the characters that are read, of up to four bytes each. */
const largestWords = 4 * 1024 * 1024

const reasons: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is no such file'],
  ['EISDIR', 'it is a folder; name a file in it'],
  ['EACCES', 'it may not be opened'],
  ['EPERM', 'it may not be opened'],
  ['ENOTDIR', 'there is no such folder'],
  ['ENOSPC', 'there is no room left'],
  ['EROFS', 'nothing may be written there'],
  ['ENAMETOOLONG', 'its name is too long'],
])

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : ''

/** Why a file could not be used, to follow "cannot be read:". */
export const reasonOf = (error: unknown): string =>
  reasons.get(codeOf(error)) ?? (error instanceof Error ? error.message : String(error))

/** The standard input goes by the name "-". */
export const isInput = (file: string | undefined): boolean => file === undefined || file === '-'

const nameOf = (file: string | undefined): string =>
  file === undefined || file === '-' ? 'the standard input' : file

const megabytes = (bytes: number): string => String(Number((bytes / 1024 / 1024).toFixed(1)))

const tooLarge = (file: string | undefined, bytes: number | null, most: number): Unusable => {
  const has = bytes === null ? `more than ${megabytes(most)}` : megabytes(bytes)
  return new Unusable(
    `${nameOf(file)} cannot be read: it has ${has} MB, and files of up to ${megabytes(most)} MB are read.`,
  )
}

/** A file, no larger than `most` bytes: its size is looked at before it is read. */
function bytesOf(file: string, most: number): Uint8Array {
  try {
    const opened = openSync(file, 'r')
    try {
      const { size } = fstatSync(opened)
      if (size > most) throw tooLarge(file, size, most)
      return readUpTo(opened, file, most)
    } finally {
      closeSync(opened)
    }
  } catch (error) {
    if (error instanceof Unusable) throw error
    throw new Unusable(`${file} cannot be read: ${reasonOf(error)}.`)
  }
}

/** What is no plain file, as a pipe or a device, does not say its size. */
function readUpTo(opened: number, file: string, most: number): Uint8Array {
  const parts: Uint8Array[] = []
  let size = 0
  for (;;) {
    const part = new Uint8Array(64 * 1024)
    const count = readSync(opened, part)
    if (count === 0) return Buffer.concat(parts)
    if ((size += count) > most) throw tooLarge(file, null, most)
    parts.push(part.subarray(0, count))
  }
}

async function inputBytes(most: number): Promise<Uint8Array> {
  const parts: Buffer[] = []
  let size = 0
  for await (const part of process.stdin as AsyncIterable<Buffer>) {
    if ((size += part.length) > most) throw tooLarge(undefined, null, most)
    parts.push(part)
  }
  return Buffer.concat(parts)
}

/** The text of a file or of the standard input. `advice`: what to do where it is none. */
async function textOf(file: string | undefined, most: number, advice: string): Promise<string> {
  const bytes = isInput(file) ? await inputBytes(most) : bytesOf(file ?? '', most)
  const text = decode(bytes)
  if (text !== null) return text
  throw new Unusable(`${nameOf(file)} cannot be read: it is not text. ${advice}`)
}

/** The words of a file, or of the standard input. Throws `Unusable` for an empty one. */
export async function readWords(file: string | undefined): Promise<string> {
  const text = await textOf(
    file,
    largestWords,
    'Save the words as plain text (UTF-8), and name that file.',
  )
  if (text.trim() === '') throw new Unusable(`There is nothing to read: ${nameOf(file)} is empty.`)
  return text
}

/** A pattern file of our own. */
export async function readPattern(file: string): Promise<Pattern> {
  const result = readFile(
    await textOf(file, largestFile, 'Name a file that was saved in Pegwright.'),
  )
  if (result.ok) return result.pattern
  throw new Unusable(`${file} cannot be used: ${oneLine(result.message)}`)
}

export const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').trim()

/** Are these one file, whatever ways lead to it? */
function isSame(a: string, b: string): boolean {
  try {
    const [one, other] = [statSync(a), statSync(b)]
    return one.ino === other.ino && one.dev === other.dev
  } catch {
    return false
  }
}

/** Throws `Unusable` where a file would be written over one that is read. */
export function refuseInputs(output: string, inputs: readonly string[]): void {
  const input = inputs.find((file) => !isInput(file) && isSame(file, output))
  if (input !== undefined)
    throw new Unusable(
      `${output} is the file that is read${input === output ? '' : `, ${input}`}. Name another file with -o, such as OUT.svg.`,
    )
}

export function saveText(file: string, text: string): void {
  try {
    writeFileSync(file, text)
  } catch (error) {
    const reason =
      codeOf(error) === 'ENOENT'
        ? `there is no folder ${dirname(file)}; make it first, or name another`
        : reasonOf(error)
    throw new Unusable(`${file} cannot be written: ${reason}.`)
  }
}
