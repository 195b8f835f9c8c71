// Installs the packages when they are missing or differ from package-lock.json.
// Uses only what Node carries, so that it runs in a fresh clone.

import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))

function packagesIn(path) {
  try {
    return JSON.parse(readFileSync(join(root, path), 'utf8')).packages ?? {}
  } catch {
    return null
  }
}

/** Whether every package that the lock file asks for is installed in the version it asks for. */
function isInstalled() {
  const wanted = packagesIn('package-lock.json')
  const found = packagesIn('node_modules/.package-lock.json')
  if (!wanted || !found) return false
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '') return true
    const there = found[path]
    if (!there) return Boolean(entry.optional || entry.devOptional)
    return there.version === entry.version
  })
}

export function installWhatIsMissing() {
  if (isInstalled()) return
  console.log('Installing packages (npm ci) ...')
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund']
  const npm = process.env.npm_execpath
  const run = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: 'inherit' })
    : spawnSync('npm', args, {
        cwd: root,
        stdio: 'inherit',
        shell: process.platform === 'win32',
      })
  if (run.status !== 0) {
    console.error('The packages could not be installed: see what npm says above.')
    process.exit(1)
  }
}
