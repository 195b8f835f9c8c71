import { linkSync, openSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { answer } from '../../src/cli/answer'
import { commandLine, pegwright, seed, workFolder } from './call'

const folder = workFolder()
const root = fileURLToPath(new URL('../../', import.meta.url))
const words = 'Rnd 1: *k2, p2; rep from * to end.\n'

function bytes(name: string, content: Uint8Array): string {
  const file = folder.put(name, '')
  writeFileSync(file, content)
  return file
}

const utf16 = (text: string, order: 'le' | 'be', mark: boolean): Uint8Array => {
  const little = Buffer.from(mark ? `\uFEFF${text}` : text, 'utf16le')
  return order === 'le' ? little : little.swap16()
}

describe('the bytes of a file', () => {
  it.each([
    ['UTF-8 with its mark', Buffer.from(`\uFEFF${words}`)],
    ['UTF-16, little end first', utf16(words, 'le', true)],
    ['UTF-16, big end first', utf16(words, 'be', true)],
    ['UTF-16 without its mark', utf16(words, 'le', false)],
    ['UTF-16 without its mark, big end first', utf16(words, 'be', false)],
    ['the older Western encoding', Buffer.from(`Caf\xe9\n${words}`, 'latin1')],
  ])('are read as text: %s', async (name, content) => {
    const { exit, output } = await answer(['read', bytes(`${name}.txt`, content), '--pegs', '8'])
    expect([exit, output.split('\n')[0]]).toEqual([
      0,
      'Rnd 1: *k2, p2; rep from * to end (8 loops)',
    ])
  })

  it.each([
    ['words', ['read', '--pegs', '8'], 'Save the words as plain text (UTF-8), and name that file.'],
    ['a pattern', ['write'], 'Name a file that was saved in Pegwright.'],
  ])('that are not text are named as that, not as %s', async (_, call, advice) => {
    const picture = Uint8Array.from({ length: 600 }, (__, at) => (at * 37) % 251)
    const file = bytes('picture.png', picture)
    expect(await answer([...call, file])).toEqual({
      output: '',
      complaints: [`${file} cannot be read: it is not text. ${advice}`],
      exit: 2,
    })
  })

  it('are counted before they are read', async () => {
    const file = folder.put('huge.txt', '')
    // Takes no room on the disk.
    truncateSync(file, 600 * 1024 * 1024)
    const { exit, complaints } = await answer(['read', file, '--pegs', '8'])
    expect([exit, complaints]).toEqual([
      2,
      [`${file} cannot be read: it has 600 MB, and files of up to 4 MB are read.`],
    ])
    expect((await answer(['check', file])).complaints).toEqual([
      `${file} cannot be read: it has 600 MB, and files of up to 16 MB are read.`,
    ])
  })

  it('are counted as they come from the standard input', async () => {
    const { exit, err } = await pegwright(['read', '--pegs', '8'], 'k1 '.repeat(2_000_000))
    expect(exit).toBe(2)
    expect(err).toBe(
      'the standard input cannot be read: it has more than 4 MB, and files of up to 4 MB are read.\n',
    )
  })
})

describe('what is written', () => {
  it('is never put over the pattern that is drawn, whatever way leads to it', async () => {
    const text = readFileSync(seed('hawser-band'), 'utf8')
    const file = folder.put('band.json', text)
    const linked = join(folder.path, 'linked.svg')
    symlinkSync(file, linked)
    const hard = join(folder.path, 'hard.svg')
    linkSync(file, hard)
    for (const output of [file, relative(process.cwd(), file), linked, hard]) {
      const { exit, complaints } = await answer(['draw', file, '--as', 'rows', '-o', output])
      expect(exit).toBe(2)
      expect(complaints).toEqual([expect.stringContaining(`${output} is the file that is read`)])
      expect(readFileSync(file, 'utf8')).toBe(text)
    }
  })

  it('is told where there is no room for it', () => {
    const full = openSync('/dev/full', 'w')
    const { status, stderr } = spawnSync(
      process.execPath,
      [commandLine, 'write', seed('hawser-band')],
      { cwd: root, stdio: ['ignore', full, 'pipe'], encoding: 'utf8' },
    )
    expect(status).toBe(2)
    expect(stderr).toBe('The output cannot be written: there is no room left.\n')
  })

  it('may be read only in part', () => {
    const { stderr } = spawnSync(
      'sh',
      [
        '-c',
        `"${process.execPath}" "${commandLine}" write "${seed('fog-watch-socks')}" | head -n 1`,
      ],
      { cwd: root, encoding: 'utf8' },
    )
    expect(stderr).toBe('')
  })
})

it.each(['constructor', 'toString', '__proto__', 'hasOwnProperty', 'valueOf'])(
  'A word of the user that every object has as a name is just a word: %s',
  async (word) => {
    expect((await answer([word])).complaints).toEqual([
      `There is no command "${word}"; there are read, check, write, draw.`,
    ])
    expect((await answer(['write', seed('hawser-band'), '--chart', word])).exit).toBe(2)
    for (const option of ['terms', 'as', 'direction'])
      expect((await answer(['draw', seed('hawser-band'), `--${option}`, word])).exit).toBe(2)
    expect((await answer(['write', seed('hawser-band'), `--${word}`, 'x'])).exit).toBe(2)
    const { exit, complaints } = await answer(['check', word])
    expect([exit, complaints]).toEqual([2, [`${word} cannot be read: there is no such file.`]])
  },
)
