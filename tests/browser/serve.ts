// Starts the app for the browser tests just as `npm start` does, on a free port, and tells the
// tests its address.

import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** The address of the running app, with a slash at its end. */
    url: string
  }
}

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Starts the app; `stop` ends it. Browser scripts outside of vitest may use this too. */
export async function serve(): Promise<{ url: string; stop: () => Promise<void> }> {
  const env: NodeJS.ProcessEnv = { ...process.env }
  // Vitest's own settings would change what is built.
  for (const name of ['NODE_ENV', 'VITEST', 'VITE_NODE_DEPS_MODULE_DIRECTORIES', 'MODE', 'DEV'])
    delete env[name]
  const child = spawn(process.execPath, ['.config/start.mjs', '--port', '0'], {
    cwd: root,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const stop = async () => {
    child.kill()
    await ended
  }
  let said = ''
  const url = await new Promise<string>((resolve, reject) => {
    const listen = (chunk: Buffer) => {
      said += chunk.toString()
      const address = /Pegwright is at (\S+)/.exec(said)?.[1]
      if (address) resolve(address)
    }
    child.stdout.on('data', listen)
    child.stderr.on('data', listen)
    child.once('error', reject)
    child.once('exit', () => reject(new Error(`The app did not start:\n${said}`)))
  })
  return { url, stop }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { url, stop } = await serve()
  project.provide('url', url)
  return stop
}
