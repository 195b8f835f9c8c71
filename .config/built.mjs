// What is made from the sources is made again only when one of them is newer.

import {
  existsSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'

/** The latest change of a file, or of anything in a folder (its own list of files included). */
function changed(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, changed(join(path, name))),
    stat.mtimeMs,
  )
}

/**
 * Runs `build` unless `made` is newer than all `sources`; `stamp` is the file that says so. The time
 * before the build counts: what changes while it runs is built the next time.
 */
export async function buildIfOlder({ stamp, made, sources }, build) {
  if (existsSync(stamp) && existsSync(made)) {
    const built = statSync(stamp).mtimeMs
    if (sources.every((path) => changed(path) < built)) return
  }
  const before = new Date()
  rmSync(stamp, { force: true })
  await build()
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, `${before.toISOString()}\n`)
  utimesSync(stamp, before, before)
}

const always = ['package-lock.json', 'tsconfig.json', 'vite.config.ts', 'src', '.config/shipped.ts']

/** The app: a folder of static files for any host. */
export const app = {
  stamp: '.build/app.stamp',
  made: '.build/app/index.html',
  sources: ['index.html', ...always],
}

/** The command line, in one file. */
export const commandLine = {
  stamp: '.build/cli.stamp',
  made: '.build/cli/main.mjs',
  sources: always,
}
