import type { BrowserContextOptions, Page } from 'playwright-core'
import { afterEach, beforeEach, expect, inject } from 'vitest'
import { BenchPage } from './bench'
import { workerBrowser } from './browser'

/** Open the app on a browser store of its own; `before` is done to the page while it is empty. */
export const openBench = async (
  size?: { width: number; height: number },
  more?: BrowserContextOptions,
  before?: (page: Page) => Promise<void>,
): Promise<BenchPage> => BenchPage.open(await workerBrowser(), inject('url'), size, more, before)

/**
 * A bench of its own for each test of a file, closed after it. A page that complains fails its
 * test: a script or style that the page's policy stops would stand among the complaints.
 */
export function eachTestWithBench(
  use: (bench: BenchPage) => void | Promise<void>,
  size?: { width: number; height: number },
  more: BrowserContextOptions = {},
): void {
  let bench: BenchPage
  beforeEach(async () => {
    bench = await openBench(size, more)
    await use(bench)
  })
  afterEach(async () => {
    expect(bench.complaints).toEqual([])
    await bench.page.context().close()
  })
}
