import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'
import { violations } from './violations'

let bench: BenchPage
eachTestWithBench((opened) => void (bench = opened), undefined, {})

const dialog = () => bench.page.getByRole('dialog', { name: 'My pieces' })
const card = (name: string) => dialog().getByRole('button', { name: new RegExp(`^${name} `) })
const chosen = (name: string) => dialog().getByRole('region', { name, exact: true })
const words = async () => (await bench.wordLines()).join('\n')
const kept = () =>
  bench.page
    .getByText(/^Kept here|^kept here|Kept in this browser/)
    .first()
    .waitFor()
const cards = () => dialog().locator('button.card strong').allInnerTexts()

async function show(): Promise<void> {
  await bench.menu('My pieces').click()
  await dialog().waitFor()
}

/** An empty piece with a purl in it, beside the cuff that the bench begins with, which is changed too. */
async function twoPieces(): Promise<void> {
  await bench.press('p', 'Enter')
  await kept()
  await bench.startEmpty(24, 8)
  await bench.press('p', 'Enter')
  await kept()
  await show()
  await card('Untitled').waitFor()
}

test('pieces are found with pictures, names and looms, chosen, opened, copied, renamed, and found again', async () => {
  await twoPieces()
  expect(await cards()).toEqual(['Untitled', 'Lamp-room cuff'])
  await dialog().locator('button.card img').nth(1).waitFor()
  await expect.poll(() => card('Untitled').innerText()).toMatch(/24-peg ring · 8 rounds/)
  expect(await violations(bench)).toEqual([])

  await card('Lamp-room cuff').click()
  const cuff = chosen('Lamp-room cuff')
  await cuff.getByRole('button', { name: 'Copy', exact: true }).click()
  await chosen('Lamp-room cuff, copy').waitFor()
  await bench.button('Rename', chosen('Lamp-room cuff, copy')).click()
  await dialog().getByRole('textbox', { name: 'Name of the piece' }).fill('Signal cuff')
  await bench.page.keyboard.press('Enter')
  await card('Signal cuff').waitFor()
  expect((await cards()).toSorted()).toEqual(['Lamp-room cuff', 'Signal cuff', 'Untitled'])

  const find = dialog().getByRole('searchbox', { name: 'Find a piece, stitch or note' })
  await find.fill('cross')
  await expect
    .poll(async () => (await cards()).toSorted())
    .toEqual(['Lamp-room cuff', 'Signal cuff'])
  await find.fill('signal')
  await expect.poll(cards).toEqual(['Signal cuff'])
  // By keys: to the card, and Enter opens it.
  await find.press('Tab')
  await bench.page.keyboard.press('Tab')
  expect(await card('Signal cuff').evaluate((one) => one === document.activeElement)).toBe(true)
  await bench.page.keyboard.press('Enter')
  await dialog().waitFor({ state: 'hidden' })
  await expect.poll(() => bench.page.title()).toBe('Signal cuff – Pegwright')
  await bench.page.reload()
  await bench.rows.waitFor()
  await expect.poll(() => bench.page.title()).toBe('Signal cuff – Pegwright')
})

test('a removed piece can be brought back; what is on the bench is not removed', async () => {
  await twoPieces()
  await card('Lamp-room cuff').click()
  await bench.button('Remove', chosen('Lamp-room cuff')).click()
  await dialog().getByText('It can be brought back for 60 days.').waitFor()
  expect(await cards()).toEqual(['Untitled'])
  await bench.button('Remove', chosen('Untitled')).press('Enter')
  await dialog().getByRole('status').getByText('It is on the bench').waitFor()
  await bench.button(/^Removed/, dialog()).click()
  await bench.button('Bring back', chosen('Lamp-room cuff')).click()
  await expect.poll(cards).toEqual([])
  await bench.button(/^All/, dialog()).click()
  expect(await cards()).toEqual(['Untitled', 'Lamp-room cuff'])
  await dialog()
    .getByRole('combobox', { name: /^It is/ })
    .selectOption('Finished')
  await expect.poll(() => bench.button(/^Finished/, dialog()).innerText()).toMatch(/1$/)
})

test('a version is looked at without a change, and gone back to as a step', async () => {
  await bench.press('p', 'Enter')
  await kept()
  await show()
  await bench.button('Name this version', chosen('Lamp-room cuff')).click()
  await dialog().getByRole('textbox', { name: 'Name of this version' }).fill('Sent for review')
  await bench.page.keyboard.press('Enter')
  await dialog().getByText('★ Sent for review').waitFor()
  await bench.button('Close', dialog()).click()
  const before = await words()
  await bench.press('ArrowLeft', 'ArrowLeft', 'Enter')
  const after = await words()
  expect(after).not.toBe(before)

  await show()
  await bench.button('Look at Sent for review').click()
  const bar = bench.page.getByRole('region', { name: 'Earlier version' })
  await bar.waitFor()
  await expect.poll(words).toBe(before)
  await bench.press('ArrowLeft', 'Enter')
  expect(await words()).toBe(before)
  await bench.page.getByText('This is an earlier version, to look at.').first().waitFor()
  expect(await violations(bench)).toEqual([])
  await bench.button('Back to now', bar).click()
  await expect.poll(words).toBe(after)

  await show()
  await bench.button('Go back to Sent for review').click()
  await expect.poll(words).toBe(before)
  await bench.press('Control+z')
  await expect.poll(words).toBe(after)
})

test('all pieces are saved as one file, and come back from it', async () => {
  await twoPieces()
  const { name, bytes } = await bench.download(() =>
    bench.button('Save all as one file', dialog()).click(),
  )
  expect(name).toMatch(/^my-pieces-[\d-]+\.json$/)
  const buffer = Buffer.from(bytes)
  const file = { name, mimeType: 'application/json', buffer }
  const bring = () => dialog().locator('input[type=file]').setInputFiles(file)
  await bring()
  await dialog().getByText('0 pieces brought back and 2 here already.').waitFor()
  const fresh = JSON.parse(buffer.toString('utf8')) as { pieces: { id: string }[] }
  for (const piece of fresh.pieces) piece.id = `other-${piece.id}`
  file.buffer = Buffer.from(JSON.stringify(fresh))
  await bring()
  await dialog()
    .getByText(/^2 pieces brought back/)
    .waitFor()
  expect(await cards()).toHaveLength(4)
})
