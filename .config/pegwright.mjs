// npm run -s pegwright -- COMMAND: the command line, translated into one file when a source is
// newer than that, and started from there.

import { mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { buildIfOlder, commandLine } from './built.mjs'
import { root } from './install.mjs'

/** Several calls may build at once: each in a folder of its own, and the file comes whole. */
async function translate() {
  const { build } = await import('vite')
  mkdirSync('.build', { recursive: true })
  const outDir = mkdtempSync('.build/cli-')
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: 'src/cli/main.ts',
      outDir,
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'main.mjs', codeSplitting: false } },
    },
  })
  mkdirSync(dirname(commandLine.made), { recursive: true })
  renameSync(join(outDir, 'main.mjs'), commandLine.made)
  rmSync(outDir, { recursive: true })
}

const called = process.cwd()
process.chdir(root)
await buildIfOlder(commandLine, translate)
process.chdir(called)
await import(pathToFileURL(join(root, commandLine.made)).href)
