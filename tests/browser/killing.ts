import type { BrowserContext, Page } from 'playwright-core'
import { readFile } from '../../src/shelf/format'
import { standardVocabulary } from '../../src/stitches/vocabulary'

// Someone paints a chart cell by cell, and the page dies at odd moments, most of them in the middle of it.

export interface KillingWish {
  readonly context: BrowserContext
  readonly url: string
  readonly kills: number
  /** At least so many cells are painted in all. */
  readonly edits: number
  /** Told after each kill. */
  readonly tell?: (line: string) => void
}

export interface Killed {
  readonly kills: number
  /** Cells that are painted at the end. */
  readonly painted: number
  /** Edits that were done, and were not there after the kill: for each kill at most the one under way may be missing. */
  readonly lost: readonly number[]
}

const pegs = 24
const rows = (page: Page) => page.getByRole('application', { name: /^Rows\./ })
const purl = standardVocabulary.withRole('purl')

/** Numbers that look random, the same each time. */
function* odd(): Generator<number, never> {
  for (let seed = 7; ; seed = (seed * 16807) % 2147483647) yield seed / 2147483647
}

export async function openPage({ context, url }: KillingWish): Promise<Page> {
  const page = await context.newPage()
  await page.goto(url)
  await rows(page).waitFor()
  return page
}

/** Cells that are purl in the file that the page saves. */
export async function painted(page: Page): Promise<number> {
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.keyboard.press('Control+s'),
  ])
  const parts: Buffer[] = []
  for await (const part of await saved.createReadStream()) parts.push(part as Buffer)
  const read = readFile(Buffer.concat(parts).toString('utf8'))
  if (!read.ok) throw new Error(`What was kept is not whole: ${read.message}`)
  const cells = read.pattern.charts.flatMap(({ chart }) => chart.rows.flatMap((row) => row.cells))
  return cells.filter((cell) => cell === purl).length
}

/** Go to the cell that is painted next: along each round, from the first on. */
async function goTo(page: Page, cell: number): Promise<void> {
  const label = await rows(page).getAttribute('aria-label')
  const [, round = '1', peg = '1'] = /Now at \D*(\d+)\D+(\d+)/.exec(label ?? '') ?? []
  const move = async (key: string, back: string, by: number) => {
    for (let step = 0; step < Math.abs(by); step++) await page.keyboard.press(by > 0 ? key : back)
  }
  await move('ArrowUp', 'ArrowDown', Math.floor(cell / pegs) + 1 - Number(round))
  await move('ArrowLeft', 'ArrowRight', (cell % pegs) + 1 - Number(peg))
}

async function startEmpty(page: Page, rounds: number): Promise<void> {
  const menu = page.getByRole('navigation', { name: 'Menu' })
  await menu.getByRole('button', { name: 'Start', exact: true }).click()
  const dialog = page.getByRole('dialog', { name: 'Start', exact: true })
  for (const [label, value] of [
    ['Pegs', pegs],
    ['Rounds', rounds],
  ] as const) {
    await dialog.getByLabel(label).fill(String(value))
    await dialog.getByLabel(label).press('Tab')
  }
  await dialog.getByRole('button', { name: 'Start' }).last().click()
  await page.getByText(/^Kept in this browser/).waitFor()
}

async function crash(context: BrowserContext, page: Page): Promise<void> {
  const session = await context.newCDPSession(page)
  const crashed = page.waitForEvent('crash')
  void session.send('Page.crash').catch(() => undefined)
  await crashed
}

/** Paint, die, come back, until all is done. Rejects when what comes back is not whole. */
export async function killOften(wish: KillingWish): Promise<{ page: Page; killed: Killed }> {
  const { context, kills, edits, tell = () => undefined } = wish
  const chance = odd()
  const each = Math.ceil(edits / kills)
  let page = await openPage(wish)
  // What is lost is painted again, so there is room for some more.
  await startEmpty(page, Math.ceil((edits + 2 * kills) / pegs) + 1)
  const lost: number[] = []
  let before = 0
  for (let kill = 0; kill < kills; kill++) {
    await rows(page).focus()
    await page.keyboard.press('p')
    await goTo(page, before)
    // It dies after a random number of the edits that were meant, at once or a moment later.
    const dies = Math.floor(chance.next().value * 700)
    const many = each + Math.floor(chance.next().value * 3)
    let done = 0
    let dead = false
    const death = page.waitForTimeout(dies).then(() => {
      dead = true
      return crash(context, page)
    })
    try {
      for (let edit = 0; edit < many && !dead; edit++) {
        await goTo(page, before + edit)
        await page.keyboard.press('Enter')
        done++
      }
    } catch {
      // The page died under the hand.
    }
    await death
    await page.close()
    page = await openPage(wish)
    await page.getByText(/where you left it|as you left it/).waitFor()
    const after = await painted(page)
    lost.push(before + done - after)
    tell(`kill ${kill + 1}: ${done} edits done, ${after - before} of them there, ${after} in all`)
    before = after
  }
  return { page, killed: { kills, painted: before, lost } }
}
