import type { BrowserContext, Locator, Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest'
import { workerBrowser } from './browser'

// Knit along on a phone, by touch: the place is there after each interruption.

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }
const complaints: string[] = []
let context: BrowserContext
let page: Page

async function openPage(): Promise<void> {
  page = await context.newPage()
  page.on('pageerror', ({ message }) => complaints.push(message))
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  await page.goto(inject('url'))
}

const rows = () => page.getByRole('application', { name: /^Rows\./ })
const knitting = () => page.getByRole('dialog', { name: /^Knit along/ })
const heading = (name: string) => knitting().getByRole('heading', { name, exact: true })
const done = () => knitting().getByRole('button', { name: /^(Done|Round done|Row done)$/ })
const returned = () => knitting().getByRole('listitem')
/** The head of a phone has its buttons behind one. */
async function choose(name: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu', exact: true }).tap()
  await page
    .getByRole('navigation', { name: 'Menu' })
    .getByRole('button', { name, exact: true })
    .tap()
}
const leave = () => knitting().getByRole('button', { name: 'Leave Knit along' }).tap()

async function begin(): Promise<void> {
  await page.getByRole('button', { name: 'Knit', exact: true }).tap()
  await knitting().waitFor()
}

/** Rounds done one after the other, as a person does: each is seen before the next. */
async function knit(from: number, to: number): Promise<void> {
  for (let round = from; round < to; round++) {
    await heading(`Round ${round}`).waitFor()
    await done().tap()
  }
  await heading(`Round ${to}`).waitFor()
}

async function castOn(): Promise<void> {
  await heading('Cast on').waitFor()
  await done().tap()
  await heading('Round 1').waitFor()
  // The button has another name now: a second tap right away would be one of the first round.
  await page.waitForTimeout(600)
}

const tapIn = async (within: Locator, name: string | RegExp) =>
  within.getByRole('button', { name }).first().tap()

beforeEach(async () => {
  complaints.length = 0
  context = await (await workerBrowser()).newContext(phone)
  await openPage()
  await rows().waitFor()
})
afterEach(async () => {
  await context.close()
  expect(complaints).toEqual([])
})

describe('on a phone', () => {
  test('twenty rounds with three interruptions: a reload, another piece, a page that dies', async () => {
    await begin()
    await castOn()
    await knit(1, 6)

    await page.reload()
    await heading('Round 6').waitFor()
    expect(await returned().allInnerTexts()).toEqual([
      expect.stringMatching(/^Round 6, where you left it, today \d/),
    ])
    await knit(6, 11)

    await leave()
    await choose('Start')
    await page
      .getByRole('dialog', { name: 'Start' })
      .getByRole('button', { name: /^Hawser band/ })
      .tap()
    await begin()
    await castOn()
    await knit(1, 3)
    await leave()
    await choose('Start')
    await page
      .getByRole('dialog', { name: 'Start' })
      .locator('.kept')
      .getByRole('button', { name: /^Lamp-room cuff/ })
      .tap()
    await begin()
    await heading('Round 11').waitFor()
    expect(await returned().allInnerTexts()).toEqual([
      expect.stringMatching(/^Round 11, where you left it, today \d/),
    ])
    await tapIn(knitting(), /^2\/2 RC/)
    await knitting().getByText('Take the loops of pegs 12 and 13').waitFor()

    const session = await context.newCDPSession(page)
    const crashed = page.waitForEvent('crash')
    void session.send('Page.crash').catch(() => undefined)
    await crashed
    await page.close()
    await openPage()
    await heading('Round 11').waitFor()
    await knitting().getByText('Take the loops of pegs 12 and 13').waitFor()
    expect(await knitting().locator('[aria-current=step]').innerText()).toBe('2/2 RC')
    await knit(11, 21)
  })
})
