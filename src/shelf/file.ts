/** Files in the user's own hands. */
import type { Pattern } from '../pattern/pattern'
import { fileName, readFile, writeFile, type ReadResult } from './format'

/** A file to be saved. */
export interface FileData {
  readonly name: string
  readonly type: string
  readonly text: string
}

const type = 'application/json'

/** A full chart of 400 columns and 600 rows stays below a quarter of this, in bytes. */
export const largestFile = 16 * 1024 * 1024

export const fileOf = (pattern: Pattern): FileData => ({
  name: fileName(pattern),
  type,
  text: writeFile(pattern),
})

/** The text of a kept piece as it is, when it cannot be read. */
export const rawFile = (title: string, text: string): FileData => ({
  name: fileName({ title }),
  type,
  text,
})

/** What is needed of a File or Blob. */
export interface Opened {
  /** Bytes. */
  readonly size: number
  readonly text: () => Promise<string>
}

/** Open a user's file. Never throws; the message is for the user. */
export async function openFile(file: Opened): Promise<ReadResult> {
  if (file.size > largestFile)
    return {
      ok: false,
      message: `This file has ${megabytes(file.size)} MB; Pegwright opens files of up to ${megabytes(largestFile)} MB.`,
    }
  let text: string
  try {
    text = await file.text()
  } catch {
    return {
      ok: false,
      message:
        'The browser could not read this file. It may have been moved or changed: choose it again.',
    }
  }
  return readFile(text)
}

const megabytes = (bytes: number): number => Math.ceil(bytes / 1024 / 1024)
