// npm start: installs what is missing, builds the app when a source is newer than the last
// build, and serves it on this machine.
//
// PORT=n serves on that port and no other (0: any free one); without it the port is 4173, or
// the next free one.

import {
  existsSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { installWhatIsMissing, root } from './install.mjs'

process.chdir(root)

const stamp = '.build/app.stamp'
const sources = ['index.html', 'package-lock.json', 'tsconfig.json', 'vite.config.ts', 'src']

/** The latest change of a file, or of anything in a folder (its own list of files included). */
function changed(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, changed(join(path, name))),
    stat.mtimeMs,
  )
}

function isBuilt() {
  if (!existsSync(stamp) || !existsSync('.build/app/index.html')) return false
  const built = statSync(stamp).mtimeMs
  return sources.every((path) => changed(path) < built)
}

function wantedPort() {
  const text = process.env.PORT
  if (text === undefined || text === '') return undefined
  const port = Number(text)
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port
  console.error(`PORT must be a whole number from 0 to 65535, not "${text}".`)
  process.exit(1)
}

const asked = wantedPort()
installWhatIsMissing()

process.env.NODE_ENV = 'production'
const { build, preview } = await import('vite')

if (!isBuilt()) {
  console.log('Building ...')
  // The time before the build counts: what changes while it runs is built the next time.
  const before = new Date()
  rmSync(stamp, { force: true })
  await build({ logLevel: 'warn' })
  mkdirSync('.build', { recursive: true })
  writeFileSync(stamp, `${before.toISOString()}\n`)
  utimesSync(stamp, before, before)
}

try {
  const server = await preview({
    logLevel: 'warn',
    preview: asked === undefined ? {} : { port: asked, strictPort: asked !== 0 },
  })
  console.log(`Pegwright is at ${server.resolvedUrls.local[0]}`)
} catch (error) {
  console.error(`Pegwright could not be served: ${error.message}`)
  process.exit(1)
}
