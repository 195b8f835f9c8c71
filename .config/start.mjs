// npm start: installs what is missing, builds the app when a source is newer than the last
// build, and serves it on this machine.
//
// npm start -- --port n, or PORT=n, serves on that port and no other (0: any free one); without
// them the port is 4173, or the next free one.

import { parseArgs } from 'node:util'
import { app, buildIfOlder } from './built.mjs'
import { installWhatIsMissing, root } from './install.mjs'

process.chdir(root)

function refuse(message) {
  console.error(message)
  process.exit(1)
}

/** What was asked for after `npm start --`; anything but a port is said, not passed over. */
function options() {
  const known = { port: { type: 'string' } }
  const args = process.argv.slice(2)
  const { tokens } = parseArgs({ args, options: known, strict: false, tokens: true })
  const strange = tokens.find(({ kind, name }) => kind !== 'option' || name !== 'port')
  if (strange)
    refuse(
      `npm start does not know ${strange.rawName ?? strange.value ?? '--'}. It takes one option: npm start -- --port 4173`,
    )
  const given = tokens.at(-1)
  return given ? ['--port', given.value ?? ''] : ['PORT', process.env.PORT]
}

function wantedPort() {
  const [name, text] = options()
  if (text === undefined || (name === 'PORT' && text === '')) return undefined
  if (/^\d{1,5}$/.test(text) && Number(text) <= 65535) return Number(text)
  return refuse(`${name} must be a whole number from 0 to 65535, not "${text}".`)
}

const asked = wantedPort()
installWhatIsMissing()

process.env.NODE_ENV = 'production'
const { build, preview } = await import('vite')

await buildIfOlder(app, async () => {
  console.log('Building ...')
  await build({ logLevel: 'warn' })
})

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
