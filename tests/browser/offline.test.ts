import { createServer, type Server } from 'node:http'
import { readFileSync } from 'node:fs'
import { extname, join, normalize } from 'node:path'
import type { AddressInfo } from 'node:net'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { BenchPage } from './bench'
import { workerBrowser } from './browser'
import { ownStore } from './pageStore'
import { readPdf } from './readPdf'

// The app as it is built, on a server of its own that goes away, or that has a newer version.

const built = fileURLToPath(new URL('../../.build/app', import.meta.url))
const types: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.md': 'text/markdown',
  '.webmanifest': 'application/manifest+json',
}

let server: Server
let bench: BenchPage
/** What the server changes in the files it serves. */
let changed: (path: string, text: string) => string

beforeEach(async () => {
  changed = (_, text) => text
  server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://host')
    const path = normalize(pathname === '/' ? '/index.html' : pathname)
    try {
      const bytes = readFileSync(join(built, path))
      const isText = /\.(html|js)$/.test(path)
      const body = isText ? changed(path, bytes.toString('utf8')) : bytes
      response.writeHead(200, {
        'Content-Type': types[extname(path)] ?? 'application/octet-stream',
      })
      response.end(body)
    } catch {
      response.writeHead(404).end()
    }
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
  const store = await ownStore(await workerBrowser(), url, { serviceWorkers: 'allow' })
  bench = await BenchPage.open(store, url)
})
afterEach(async () => {
  await bench.close()
  await stopServer()
})

async function stopServer(): Promise<void> {
  server.closeAllConnections()
  await new Promise<void>((resolve) => server.close(() => resolve()))
}

/** The app is fetched whole, and kept. */
const kept = (page: Page = bench.page) =>
  page.evaluate(async () => void (await navigator.serviceWorker.ready))

async function reload(): Promise<void> {
  await bench.page.reload()
  await bench.rows.waitFor()
}

test('with the server gone it starts, takes the main job, and writes a first PDF', async () => {
  await kept()
  await bench.press('p', 'Enter')
  const painted = (await bench.wordLines()).join('\n')
  await stopServer()
  await reload()
  await expect.poll(async () => (await bench.wordLines()).join('\n')).toBe(painted)

  await bench.startEmpty(24, 8)
  await bench.press('p', 'Enter', 'ArrowLeft', 'Enter')
  await expect.poll(async () => (await bench.wordLines()).join('\n')).toContain('p2')
  await bench.menu('Booklet').click()
  const dialog = bench.page.getByRole('dialog', { name: 'Booklet' })
  const { bytes } = await bench.download(() => bench.button(/PDF/, dialog).click())
  expect((await readPdf(bytes)).pages.length).toBeGreaterThan(0)
  await bench.page.keyboard.press('Escape')

  await bench.menu('Start').click()
  await bench.button('About Pegwright, licences').click()
  const about = bench.page.getByRole('dialog', { name: 'About Pegwright' })
  await about.getByText('starts without a network').waitFor()
  await about.getByText('SIL OPEN FONT LICENSE Version 1.1').waitFor()
  await about.getByText('## workbox-precaching').waitFor()

  await reload()
  await expect.poll(async () => (await bench.wordLines()).join('\n')).toContain('p2')
})

/** The server has a version with another title, which no browser has in its caches. */
function newVersion(): void {
  changed = (path, text) => {
    if (path === '/index.html') return text.replace('<div id="bench">', '<div id="bench" data-new>')
    return path === '/worker.js'
      ? text.replaceAll(/(url:"index\.html",revision:")[^"]*/g, '$1newer')
      : text
  }
}
const isNew = (page: Page = bench.page) => page.locator('#bench[data-new]').count()
const said = (page: Page = bench.page) => page.getByText('A new version of Pegwright is here.')

test('a new version waits while it is worked, and is taken at the next start without loss', async () => {
  await kept()
  const blank = (await bench.wordLines()).join('\n')
  await bench.press('p', 'Enter')
  newVersion()
  await reload()
  await said().first().waitFor()
  expect(await isNew()).toBe(0)
  await bench.press('ArrowLeft', 'Enter')
  const painted = (await bench.wordLines()).join('\n')
  // The last change is not a moment old.
  await reload()
  await expect.poll(() => isNew()).toBe(1)
  await expect.poll(async () => (await bench.wordLines()).join('\n')).toBe(painted)
  await bench.press('Control+z', 'Control+z')
  await expect.poll(async () => (await bench.wordLines()).join('\n')).toBe(blank)
  // It starts without a network too.
  await stopServer()
  await reload()
  expect(await isNew()).toBe(1)
  expect(bench.complaints.filter((text) => !text.includes('ERR_CONNECTION_REFUSED'))).toEqual([])
})

test('a new version is not taken while another window works with the old one', async () => {
  await kept()
  newVersion()
  await reload()
  await said().first().waitFor()
  const second = await bench.page.context().newPage()
  await second.goto(bench.page.url())
  await said(second).first().waitFor()
  expect([await isNew(), await isNew(second)]).toEqual([0, 0])
  // The part for booklets is still of the version that this window has.
  await bench.menu('Booklet').click()
  const dialog = bench.page.getByRole('dialog', { name: 'Booklet' })
  await bench.download(() => bench.button(/PDF/, dialog).click())
  await second.close()
  await reload()
  await expect.poll(() => isNew()).toBe(1)
})
