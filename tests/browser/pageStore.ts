import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'

/** Where the app is opened with nothing kept. */
export interface PageStore {
  newPage(): Promise<Page>
  close(page: Page): Promise<void>
}

const size = { width: 1440, height: 900 }

async function newContext(
  browser: Browser,
  url: string,
  more: BrowserContextOptions = {},
): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: size,
    acceptDownloads: true,
    // Only the tests of use without a network let the app be kept.
    serviceWorkers: 'block',
    ...more,
  })
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: url })
  return context
}

/** A store for one page, with settings of its own; all of it ends with the page. */
export async function ownStore(
  browser: Browser,
  url: string,
  more?: BrowserContextOptions,
): Promise<PageStore> {
  const context = await newContext(browser, url, more)
  return { newPage: () => context.newPage(), close: () => context.close() }
}

/**
 * A store for many pages, one after the other: what the program is made of is fetched and translated
 * once. Each new page ends those before it, and an empty page that stays open clears what they kept.
 */
export async function sharedStore(browser: Browser, url: string): Promise<PageStore> {
  const context = await newContext(browser, url)
  const empty = await context.newPage()
  const session = await context.newCDPSession(empty)
  return {
    async newPage() {
      for (const page of context.pages()) if (page !== empty) await page.close()
      await session.send('Storage.clearDataForOrigin', {
        origin: new URL(url).origin,
        storageTypes: 'all',
      })
      return context.newPage()
    },
    close: (page) => page.close(),
  }
}
