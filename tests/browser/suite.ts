import type { BrowserContextOptions, Page } from 'playwright-core'
import { afterEach, beforeEach, expect, inject } from 'vitest'
import { BenchPage } from './bench'
import { workerBrowser } from './browser'
import { ownStore, sharedStore, type PageStore } from './pageStore'

let shared: Promise<PageStore> | undefined

/**
 * Open the app where nothing is kept; `before` is done to the page while it is empty. Pages with
 * settings of their own have a store of their own.
 */
export async function openBench(
  size?: { width: number; height: number },
  more?: BrowserContextOptions,
  before?: (page: Page) => Promise<void>,
): Promise<BenchPage> {
  const url = inject('url')
  const browser = await workerBrowser()
  const store = await (more ? ownStore(browser, url, more) : (shared ??= sharedStore(browser, url)))
  return BenchPage.open(store, url, async (page) => {
    if (size) await page.setViewportSize(size)
    await before?.(page)
  })
}

/**
 * A bench of its own for each test of a file, closed after it. A page that complains fails its
 * test: a script or style that the page's policy stops would stand among the complaints.
 */
export function eachTestWithBench(
  use: (bench: BenchPage) => void | Promise<void>,
  size?: { width: number; height: number },
  more?: BrowserContextOptions,
): void {
  let bench: BenchPage
  beforeEach(async () => {
    bench = await openBench(size, more)
    await use(bench)
  })
  afterEach(async () => {
    await bench.close()
    expect(bench.complaints).toEqual([])
  })
}
