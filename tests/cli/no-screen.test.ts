import { execFileSync } from 'node:child_process'
import { statSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { answer } from '../../src/cli/answer'
import { usage } from '../../src/cli/usage'
import { commandLine, pegwright, seed } from './call'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** All modules that the command line loads, and the packages they name. */
function reached(): string[] {
  const out = execFileSync(
    process.execPath,
    [
      'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
      '--config',
      '.config/dependency-cruiser.cjs',
      '--output-type',
      'json',
      'src/cli',
    ],
    { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 },
  )
  const { modules } = JSON.parse(out) as { modules: { source: string }[] }
  return modules.map(({ source }) => source)
}

describe('the command line', () => {
  it('loads nothing that needs a browser', () => {
    const modules = reached()
    expect(modules).toContain('src/cli/main.ts')
    expect(modules.filter((name) => /svelte|jspdf|svg2pdf|src\/bench\//.test(name))).toEqual([])
  })

  it('never asks for a document or a window', async () => {
    expect(globalThis).not.toHaveProperty('document')
    const trap = `for (const name of ['document', 'window', 'localStorage', 'indexedDB'])
      Object.defineProperty(globalThis, name, {
        get() { process.stderr.write(name + ' was asked for'); return undefined },
      })`
    const trapped = ['--import', `data:text/javascript,${encodeURIComponent(trap)}`]
    const calls = [
      ['check', seed('lamp-room-cuff')],
      ['write', seed('lamp-room-cuff')],
      ['draw', seed('lamp-room-cuff'), '--as', 'ring', '-o', '-'],
      ['read', '--pegs', '4'],
    ]
    for (const args of calls)
      expect(await pegwright(args, 'Rnd 1: Knit.', trapped)).toMatchObject({ exit: 0, err: '' })
  })

  it('starts from one file without the sources, and is translated again when one of them is newer', () => {
    const made = join(root, '.build/cli/main.mjs')
    const help = () => execFileSync(process.execPath, [commandLine, '--help'], { cwd: root })
    help()
    const first = statSync(made).mtimeMs
    help()
    expect(statSync(made).mtimeMs).toBe(first)
    const later = new Date()
    utimesSync(join(root, 'src/cli/usage.ts'), later, later)
    help()
    expect(statSync(made).mtimeMs).toBeGreaterThan(first)
  })

  it('is what npm runs, and its exit code and output come through', () => {
    const out = execFileSync('npm', ['run', '-s', 'pegwright', '--', 'read', '--pegs', '4'], {
      cwd: root,
      encoding: 'utf8',
      input: 'Rnd 1: k2, p2.\n',
    })
    expect(out).toContain('Rnd 1: k2, p2 (4 loops)')
  })

  it.each([['--help'], ['read', '--help'], ['check', '-h'], ['write', '--help'], ['draw', '-h']])(
    'prints its usage: %s %s',
    async (...args) => {
      expect(await answer(args)).toEqual({ exit: 0, output: usage, complaints: [] })
    },
  )
})
