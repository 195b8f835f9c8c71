import type { BrowserContext, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { workerBrowser } from './browser'

// The page is killed or left at odd moments while someone paints: what is there afterwards opens,
// is whole, and is what was painted up to some moment before.

const pegs = 24
const rows = (page: Page) => page.getByRole('application', { name: /^Rows\./ })

async function openPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  await page.goto(inject('url'))
  await rows(page).waitFor()
  return page
}

/** Purls in the first round, which are painted from the first peg on. */
async function painted(page: Page): Promise<number> {
  const line = page.getByRole('region', { name: 'Words' }).locator('.cm-line').first()
  await line.waitFor()
  const text = await line.innerText()
  expect(text).toMatch(/^Rnd/)
  const [, some, one] = /: p(?:(\d+)|(?=,))|: (Purl)/.exec(text) ?? []
  return one ? pegs : some ? Number(some) : 0
}

/** Numbers that look random, the same each time. */
function* odd(): Generator<number, never> {
  for (let seed = 7; ; seed = (seed * 16807) % 2147483647) yield seed / 2147483647
}

test('a page that is killed or left while it is painted on opens with what was kept', async () => {
  const context = await (
    await workerBrowser()
  ).newContext({ viewport: { width: 1440, height: 900 } })
  const chance = odd()
  let page = await openPage(context)
  await page
    .getByRole('navigation', { name: 'Menu' })
    .getByRole('button', { name: 'Start' })
    .click()
  const dialog = page.getByRole('dialog', { name: 'Start' })
  await dialog.getByLabel('Pegs').fill(String(pegs))
  await dialog.getByLabel('Pegs').press('Tab')
  await dialog.getByRole('button', { name: 'Start' }).last().click()
  await page.getByText(/^Kept in this browser/).waitFor()
  await rows(page).focus()
  await page.keyboard.press('p')

  let before = 0
  for (let round = 0; round < 8; round++) {
    const now = 2 + Math.floor(chance.next().value * 2)
    await rows(page).focus()
    await page.keyboard.press('p')
    await page.keyboard.press('Home')
    for (let peg = 0; peg < before; peg++) await page.keyboard.press('ArrowLeft')
    for (let peg = 0; peg < now; peg++) {
      await page.keyboard.press('Enter')
      await page.keyboard.press('ArrowLeft')
    }
    await page.waitForTimeout(chance.next().value * 900)
    const killed = round % 2 === 0
    if (killed) {
      const session = await context.newCDPSession(page)
      const crashed = page.waitForEvent('crash')
      void session.send('Page.crash').catch(() => undefined)
      await crashed
      await page.close()
      page = await openPage(context)
    } else {
      await page.reload()
      await rows(page).waitFor()
    }
    await page.getByText(/where you left it|as you left it/).waitFor()
    expect(await page.locator('dialog[open]').count()).toBe(0)
    const after = await painted(page)
    expect(after).toBe(before + now)
    before = after
  }
  expect(before).toBeGreaterThanOrEqual(8)
  // All of it can be taken back, over all the times that the page was gone.
  await rows(page).focus()
  for (let peg = before; peg > 0; peg--) {
    expect(await painted(page)).toBe(peg)
    await page.keyboard.press('Control+z')
  }
  expect(await painted(page)).toBe(0)
  // The piece that was there before this one was started is not brought back any more.
  const words = page.getByRole('region', { name: 'Words' }).locator('.cm-line')
  const blank = await words.allInnerTexts()
  await page.keyboard.press('Control+z')
  expect(await words.allInnerTexts()).toEqual(blank)
  await context.close()
})
