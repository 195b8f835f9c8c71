import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest'
import { BenchPage } from './bench'
import { openBrowser } from './browser'
import { readPdf } from './readPdf'

let browser: Browser
let bench: BenchPage

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
})
beforeEach(async () => {
  bench = await BenchPage.open(browser, inject('url'))
})
afterEach(async () => {
  expect(bench.complaints).toEqual([])
  await bench.page.context().close()
})

/** A ring of 24 pegs, 8 rounds, columns 1 to 8 repeated, a 2/2 left cross over their edge. */
async function paintWrongCross(): Promise<void> {
  await bench.startEmpty(24, 8)
  await bench.press('Home', ...new Array<string>(16).fill('ArrowLeft'))
  expect(await bench.place()).toBe('row 1, peg 17: knit')
  const dialogFree = bench.button('Repeat these columns')
  await bench.press(...new Array<string>(7).fill('Shift+ArrowLeft'))
  await dialogFree.click()
  await bench.page
    .getByRole('searchbox', { name: 'Search stitches' })
    .fill('left cross, two over two')
  await bench.button(/^left cross, two over two, 2\/2 LC/).click()
  await bench.press('Home', ...new Array<string>(14).fill('ArrowLeft'), 'ArrowUp', 'ArrowUp')
  await bench.press('Enter')
}

test('the main job: paint a wrong cross, mend it, undo, redo, reload, print', async () => {
  await paintWrongCross()
  const finding = bench.findings.getByRole('listitem').filter({ hasText: 'repeat' }).first()
  await finding.waitFor()
  const wrong = await bench.findings.innerText()
  const before = await bench.wordLines()

  await finding.getByRole('button').nth(1).click()
  await finding.waitFor({ state: 'detached' })
  const mended = await bench.wordLines()
  expect(mended).not.toEqual(before)

  await bench.press('Control+z')
  expect(await bench.findings.innerText()).toBe(wrong)
  expect(await bench.wordLines()).toEqual(before)
  await bench.press('Control+Shift+z')
  expect(await bench.wordLines()).toEqual(mended)

  await bench.page.getByText(/^Kept in this browser at/).waitFor()
  await bench.page.reload()
  await bench.rows.waitFor()
  await bench.page.getByText('Taken up where it was left').waitFor()
  expect(await bench.wordLines()).toEqual(mended)
})
