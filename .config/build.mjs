// npm run build: installs what is missing and makes the app: a folder of static files that any
// web server can serve from any address.

import { resolve } from 'node:path'
import { app, buildIfOlder } from './built.mjs'
import { installWhatIsMissing, root } from './install.mjs'

process.chdir(root)
installWhatIsMissing()
process.env.NODE_ENV = 'production'
const { build } = await import('vite')
await buildIfOlder(app, () => build({ logLevel: 'warn' }))
console.log(`The app stands in ${resolve('.build/app')}`)
