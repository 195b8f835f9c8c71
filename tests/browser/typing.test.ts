import type { Locator } from 'playwright-core'
import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const dialog = () => bench.page.locator('dialog[open]')
const keys = () => bench.page.keyboard
const worked = async () => (await bench.openPlace()).getByLabel(/^Worked/)
/** Click into it, put this in place of what stands there, and press keys. */
async function write(field: Locator, text: string, ...then: string[]): Promise<void> {
  await field.click()
  await keys().press('Control+a')
  await keys().type(text)
  for (const key of then) await keys().press(key)
}
async function clickACell(): Promise<void> {
  const box = await bench.rows.boundingBox()
  if (!box) throw new Error('The chart is not drawn')
  await bench.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
}

test('Escape takes back what is typed in a field', async () => {
  await clickACell()
  const was = await (await worked()).inputValue()
  await write(await worked(), '7', 'Escape')
  expect(await (await worked()).inputValue()).toBe(was)
  await clickACell()
  expect(await (await worked()).inputValue()).toBe(was)
})

test.each(['Title', 'Notes', 'Pegs', 'Stitches in 10 cm'])(
  'in %s of a dialog the first Escape takes back what is typed, the next one closes the dialog',
  async (name) => {
    const title = bench.page.getByLabel('Title').first()
    const before = await title.inputValue()
    await bench.choose('Loom and swatch')
    const field = dialog().getByLabel(name, { exact: true })
    const was = await field.inputValue()
    await write(field, '29', 'Escape')
    expect(await field.inputValue()).toBe(was)
    await keys().press('Escape')
    await dialog().waitFor({ state: 'detached' })
    expect(await title.inputValue()).toBe(before)
    expect(await bench.menu('Undo').getAttribute('aria-disabled')).toBe('true')
  },
)

test('what is being typed when the page goes is taken', async () => {
  const title = bench.page.getByLabel('Title').first()
  await write(title, 'Tide lines')
  await bench.page.reload()
  await expect.poll(() => title.inputValue()).toBe('Tide lines')
})

test('a comma is a decimal sign, and a refusal goes with the mistake', async () => {
  await bench.choose('Loom and swatch')
  const pitch = dialog().getByLabel(/^Pitch/)
  const refusal = dialog().locator('.refusal')
  await write(pitch, '9,6', 'Tab')
  expect(await pitch.inputValue()).toBe('9.6')
  expect(await refusal.innerText()).toBe('')
  for (const key of ['Tab', 'Enter']) {
    await write(pitch, '900', 'Enter')
    expect(await refusal.innerText()).toMatch(/^Pitch.* It is still 9\.6\.$/)
    await write(pitch, '9,6', key)
    expect(await refusal.innerText()).toBe('')
  }
  const stitches = dialog().getByLabel('Stitches in 10 cm')
  await write(stitches, '18,5', 'Enter')
  expect(await stitches.inputValue()).toBe('18.5')
  expect(await refusal.innerText()).toBe('')
})

test('a refusal in passing goes when the mistake is mended', async () => {
  await clickACell()
  const was = await (await worked()).inputValue()
  await write(await worked(), '0', 'Tab')
  const said = bench.page.locator('.said:not(.in-dialog)')
  await said.getByText(/^Worked: enter a whole number/).waitFor()
  await write(await worked(), was, 'Enter')
  expect(await said.innerText()).toBe('')
})

test('Enter in a number of an empty chart starts it', async () => {
  await bench.choose('Start')
  await write(dialog().getByLabel('Rounds'), '0', 'Enter')
  // What is refused starts nothing.
  expect(await dialog().locator('.refusal').innerText()).toMatch(/^Rounds: enter a whole number/)
  await write(dialog().getByLabel('Pegs'), '20', 'Tab')
  await write(dialog().getByLabel('Rounds'), '5', 'Enter')
  await dialog().waitFor({ state: 'detached' })
  await expect.poll(() => bench.rows.getAttribute('aria-label')).toMatch(/5 rounds/)
})

test('a field without changes lets undo through', async () => {
  await clickACell()
  const was = await (await worked()).inputValue()
  await write(await worked(), '7', 'Enter')
  expect(await (await worked()).inputValue()).toBe('7')
  await keys().press('Control+z')
  await expect.poll(async () => (await worked()).inputValue()).toBe(was)
  const title = bench.page.getByLabel('Title').first()
  const named = await title.inputValue()
  await write(title, 'Tide lines', 'Enter', 'Control+z')
  await expect.poll(() => title.inputValue()).toBe(named)
})

test('up and down go on by a step', async () => {
  await bench.choose('Loom and swatch')
  const pitch = dialog().getByLabel(/^Pitch/)
  await write(pitch, '9.5', 'Enter', 'ArrowUp', 'ArrowUp', 'ArrowDown')
  expect(await pitch.inputValue()).toBe('9.6')
})

test('Enter in the search takes the first stitch that is found', async () => {
  const search = bench.page.getByRole('searchbox')
  await write(search, 'purl')
  const first = bench.page.locator('.tray ul .abbr').first()
  const abbr = await first.innerText()
  expect(await bench.page.locator('.tray ul .abbr').count()).toBeGreaterThan(1)
  await keys().press('Enter')
  expect(await bench.page.locator('.in-hand strong').innerText()).toBe(abbr)
  expect(await search.inputValue()).toBe('')
})
