import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject } from 'vitest'
import { BenchPage } from './bench'
import { openBrowser } from './browser'

/**
 * A bench of its own for each test of a file, closed after it. A page that complains fails its
 * test: a script or style that the page's policy stops would stand among the complaints.
 */
export function eachTestWithBench(
  use: (bench: BenchPage) => void | Promise<void>,
  size?: { width: number; height: number },
  more: BrowserContextOptions = {},
): void {
  let browser: Browser
  let bench: BenchPage
  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser?.close()
  })
  beforeEach(async () => {
    bench = await BenchPage.open(browser, inject('url'), size, more)
    await use(bench)
  })
  afterEach(async () => {
    expect(bench.complaints).toEqual([])
    await bench.page.context().close()
  })
}
