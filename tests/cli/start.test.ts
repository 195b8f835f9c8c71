/** What `npm start` is asked for: a wrong call ends before anything is installed or built. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** It would serve until it is stopped, were the call not refused. */
function start(args: readonly string[], port = ''): { exit: number | null; said: string } {
  const { status, stderr } = spawnSync(process.execPath, ['.config/start.mjs', ...args], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, PORT: port },
    timeout: 20_000,
  })
  return { exit: status, said: stderr.trim() }
}

test.each([
  [['--host', 'here'], '--host'],
  [['--prot=4391'], '--prot'],
  [['4391'], '4391'],
  [['--port', '4391', 'again'], 'again'],
])('an option that is not known is said: %j', (args, named) => {
  expect(start(args)).toEqual({
    exit: 1,
    said: `npm start does not know ${named}. It takes one option: npm start -- --port 4173`,
  })
})

test.each(['', 'nine', '65536', '-1', '1e3', '43.9'])('no port is %j', (port) => {
  const said = `--port must be a whole number from 0 to 65535, not "${port}".`
  expect(start([`--port=${port}`])).toEqual({ exit: 1, said })
})

test('a port of the environment is held to the same', () => {
  const said = 'PORT must be a whole number from 0 to 65535, not "nine".'
  expect(start([], 'nine')).toEqual({ exit: 1, said })
})
