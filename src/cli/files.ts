import { dirname } from 'node:path'
import { readFileSync, writeFileSync } from 'node:fs'
import { text as allOf } from 'node:stream/consumers'
import type { Pattern } from '../pattern/pattern'
import { largestFile } from '../shelf/file'
import { readFile } from '../shelf/format'
import { Unusable } from './call'

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder; name a file in it',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
  ENOTDIR: 'there is no such folder',
}

const reasonOf = (error: unknown): string => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return reasons[code] ?? (error instanceof Error ? error.message : String(error))
}

/** The standard input goes by the name "-". */
export const isInput = (file: string | undefined): boolean => file === undefined || file === '-'

/** Text in UTF-8, or in the older Western encoding if it cannot be that. */
function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file)
  } catch (error) {
    throw new Unusable(`${file} cannot be read: ${reasonOf(error)}.`)
  }
}

/** The text of a file, or of the standard input. Throws `Unusable` for an empty one. */
export async function readWords(file: string | undefined): Promise<string> {
  const text =
    file === undefined || file === '-' ? await allOf(process.stdin) : decode(bytesOf(file))
  if (text.trim() === '')
    throw new Unusable(
      `There is nothing to read: ${isInput(file) ? 'the standard input' : file} is empty.`,
    )
  return text
}

/** A pattern file of our own. */
export async function readPattern(file: string): Promise<Pattern> {
  const text = isInput(file) ? await allOf(process.stdin) : decode(bytesOf(file))
  if (text.length > largestFile)
    throw new Unusable(`${file} is no pattern file: it has more than ${largestFile} characters.`)
  const result = readFile(text)
  if (result.ok) return result.pattern
  throw new Unusable(`${file} cannot be used: ${oneLine(result.message)}`)
}

export const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').trim()

export function saveText(file: string, text: string): void {
  try {
    writeFileSync(file, text)
  } catch (error) {
    const isMissing = error instanceof Error && 'code' in error && error.code === 'ENOENT'
    const reason = isMissing
      ? `there is no folder ${dirname(file)}; make it first, or name another`
      : reasonOf(error)
    throw new Unusable(`${file} cannot be written: ${reason}.`)
  }
}
