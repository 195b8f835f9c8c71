import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

// After a press with the mouse the keys work on the chart, also when no chart had the focus before;
// by keyboard the focus stays where it was, and letters mean nothing beside a chart (WCAG 2.1.4).

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const inHand = () => bench.page.locator('.in-hand')
const hand = (name: string) => bench.page.locator('.tray label').filter({ hasText: name })
const dialog = () => bench.page.locator('dialog[open]')
/** Press the key of the purl stitch, and see that it is in hand. */
async function keysWork(): Promise<void> {
  await expect
    .poll(() => bench.page.evaluate(() => document.activeElement?.role))
    .toBe('application')
  await bench.page.keyboard.press('y')
  await expect.poll(() => inHand().textContent()).toMatch(/yo/)
}

describe('before a chart had the focus, the keys work after a press on', () => {
  test.each(['Mark', 'Plain', 'Paint'])('the hand %s', async (name) => {
    await hand(name).click()
    await keysWork()
  })

  test('a stitch of the tray', async () => {
    await bench
      .button(/^k\s*, knit/, bench.page.getByRole('region', { name: 'Stitch tray' }))
      .click()
    await keysWork()
  })

  test('a reading of a pane', async () => {
    await bench.show('Pegs')
    await keysWork()
  })
})

describe('after the dialog', () => {
  const names = ['Start', 'Loom and swatch', 'Booklet']
  test.each(names)('%s, opened and closed by mouse, the keys work', async (name) => {
    await bench.choose(name)
    await bench.button('Close', dialog()).click()
    await keysWork()
  })

  test.each(names)('%s, opened by mouse and left by Escape, the keys work', async (name) => {
    await bench.choose(name)
    await dialog().waitFor()
    await bench.page.keyboard.press('Escape')
    await keysWork()
  })

  test('of the steps the keys work', async () => {
    await bench.choose('Steps')
    await bench.button('Done', dialog()).click()
    await keysWork()
  })

  test('that starts another piece the keys work', async () => {
    await bench.choose('Start')
    await bench.page.getByRole('button', { name: /Drift-net panel/ }).click()
    await dialog().waitFor({ state: 'hidden' })
    await keysWork()
  })

  test('of a cross the keys work', async () => {
    await bench.button('Make a cross').click()
    await bench.page.locator('[popover]:popover-open button').last().click()
    await keysWork()
  })

  test('opened and left by keys, the focus is where it was and letters mean nothing', async () => {
    const booklet = bench.menu('Booklet')
    await booklet.focus()
    await bench.page.keyboard.press('Enter')
    await dialog().waitFor()
    await bench.page.keyboard.press('Escape')
    await dialog().waitFor({ state: 'hidden' })
    expect(await booklet.evaluate((button) => button === document.activeElement)).toBe(true)
    const before = await inHand().textContent()
    await bench.page.keyboard.press('y')
    expect(await inHand().textContent()).toBe(before)
  })
})

test('a click selects the number, the next one sets the caret', async () => {
  const times = (await bench.openPlace()).getByLabel('Worked')
  await times.click()
  await bench.page.keyboard.type('13')
  expect(await times.inputValue()).toBe('13')
  const box = await times.boundingBox()
  if (!box) throw new Error('The field is not drawn')
  await bench.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
  await bench.page.keyboard.type('0')
  expect(await times.inputValue()).toBe('130')
})

test.each(['mouse', 'keys'])('words that are made mine take the focus, by %s', async (by) => {
  const button = bench.button('Make them mine')
  if (by === 'mouse') await button.click()
  else await button.press('Enter')
  await expect.poll(() => bench.text.evaluate((text) => text.matches(':focus'))).toBe(true)
  // A second press of the key goes into the words: it takes nothing back.
  if (by === 'keys') await bench.page.keyboard.press('Enter')
  await bench.standing.filter({ hasText: 'My own words' }).waitFor()
  expect(await bench.page.locator('dialog[open]').count()).toBe(0)
})

test('a double click on “Make them mine” asks nothing of what then stands there', async () => {
  await bench.button('Make them mine').dblclick()
  await bench.says('My own words')
  expect(await dialog().count()).toBe(0)
  await bench.button('Write from the chart').click()
  await dialog().waitFor()
})

test('a double click on a starter paints nothing on the chart that was behind the dialog', async () => {
  /** The chart and its place once this starter was pressed so often, over a part of its width. */
  const started = async (presses: number, at: number): Promise<string> => {
    await hand('Paint').click()
    await bench.choose('Start')
    const starter = dialog().getByRole('button', { name: /^Drift-net panel Flat/ })
    const box = await starter.boundingBox()
    if (!box) throw new Error('The starter is not drawn')
    await starter.click({
      position: { x: box.width * at, y: box.height / 2 },
      clickCount: presses,
    })
    await dialog().waitFor({ state: 'hidden' })
    await bench.page.waitForTimeout(300)
    return `${await bench.place()}: ${await bench.rows.innerHTML()}`
  }
  for (const at of [0.05, 0.4]) expect(await started(2, at)).toBe(await started(1, at))
})
