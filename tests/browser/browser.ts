// Finds a browser and opens it without a window.

import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { chromium, type Browser } from 'playwright-core'

/** The names under which Chrome and Chromium are found on the PATH. */
const commands = ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser', 'chrome']

/** The places where they are installed without being on the PATH. */
function usualPlaces(): string[] {
  if (process.platform === 'darwin') {
    return [
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
    ]
  }
  if (process.platform === 'win32') {
    return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
      const folder = process.env[name]
      return folder ? [join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe')] : []
    })
  }
  return ['/opt/google/chrome/chrome', '/usr/lib/chromium/chromium', '/snap/bin/chromium']
}

/** An installed Chrome or Chromium; CHROME_PATH names one that is to be used. */
function findInstalled(): string | undefined {
  const named = process.env.CHROME_PATH
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROME_PATH names no file: ${named}`)
    return named
  }
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => commands.map((command) => join(folder, command)))
  return [...onPath, ...usualPlaces()].find((path) => existsSync(path))
}

/** The browser asks nobody for anything but the page it is told to open. */
const quiet = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-default-apps',
  '--disable-domain-reliability',
  '--disable-sync',
  '--metrics-recording-only',
  '--no-default-browser-check',
  '--no-first-run',
  '--no-pings',
]

/**
 * Arguments of the carried browser that are left out: in one process it ends when its first
 * window closes, without web security it would let pass what other browsers stop, and a graphics
 * card played by the processor paints large drawings many times slower than the processor itself.
 */
const unwanted = [
  '--single-process',
  '--no-zygote',
  '--in-process-gpu',
  '--disable-web-security',
  '--allow-running-insecure-content',
  '--ignore-gpu-blocklist',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
]

/** Opens an installed Chrome or Chromium, or else the one that a package carries for Linux. */
export async function openBrowser(): Promise<Browser> {
  const installed = findInstalled()
  if (installed) {
    const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : []
    return chromium.launch({ executablePath: installed, args: [...quiet, ...asRoot] })
  }
  if (process.platform !== 'linux') {
    throw new Error('No Chrome or Chromium was found: name one in CHROME_PATH')
  }
  const { default: carried } = await import('@sparticuz/chromium')
  return chromium.launch({
    executablePath: await carried.executablePath(),
    args: [...carried.args.filter((arg) => !unwanted.includes(arg)), '--disable-gpu', ...quiet],
  })
}

let opened: Promise<Browser> | undefined

/** The one browser of a worker's tests: opened with the first of them, gone with the worker. */
export const workerBrowser = (): Promise<Browser> => (opened ??= openBrowser())
