import { execFileSync, spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** What `npm run pegwright` runs. It is translated here first, so that no call is held up by that. */
export const commandLine = join(root, '.config/pegwright.mjs')
execFileSync(process.execPath, [commandLine, '--help'], { cwd: root })

export interface Ended {
  readonly exit: number | null
  readonly out: string
  readonly err: string
}

/** Call the real command line in a process of its own, as `npm run pegwright -- ...` does. */
export function pegwright(
  args: readonly string[],
  input = '',
  nodeArgs: readonly string[] = [],
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...nodeArgs, commandLine, ...args], { cwd: root })
    let [out, err] = ['', '']
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text))
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text))
    child.on('error', reject)
    child.on('close', (exit) => resolve({ exit, out, err }))
    child.stdin.on('error', () => undefined)
    child.stdin.end(input)
  })
}

export const seed = (name: string): string => join(root, 'seeds', `${name}.json`)

/** A folder of its own for the files of a test; it goes when the tests of the file are done. */
export function workFolder(): { path: string; put: (name: string, text: string) => string } {
  const path = mkdtempSync(join(tmpdir(), 'pegwright-'))
  afterAll(() => rmSync(path, { recursive: true, force: true }))
  return {
    path,
    put: (name, text) => {
      const file = join(path, name)
      writeFileSync(file, text)
      return file
    },
  }
}
