import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

test('a ring that is fitted stays whole wherever the place goes', async () => {
  await bench.show('Ring')
  const hidden = () =>
    bench.ring.evaluate((svg) => {
      const drawn = svg.getBoundingClientRect()
      const view = (svg.parentElement ?? svg).getBoundingClientRect()
      const over = [
        view.left - drawn.left,
        drawn.right - view.right,
        view.top - drawn.top,
        drawn.bottom - view.bottom,
      ]
      return Math.max(...over)
    })
  for (const width of [1440, 1024]) {
    await bench.page.setViewportSize({ width, height: 900 })
    await expect.poll(hidden).toBeLessThanOrEqual(0)
    for (let quarter = 0; quarter < 4; quarter++) {
      await bench.press(...Array<string>(9).fill('ArrowLeft'))
      await expect.poll(hidden).toBeLessThanOrEqual(0)
    }
  }
})

test('words with a slip near "knit" are found faulty, kept, and offered to the dialog', async () => {
  const words = 'Rnd 1: Knit the knits.\nRnd 3: Prul.'
  await bench.text.click()
  await bench.paste(words)
  await bench.says('differ from the chart')
  await bench.page.getByText(/^Kept in this browser/).waitFor()
  await bench.page.reload()
  await bench.says('differ from the chart')
  await bench.button('Chart from words').click()
  const dialog = bench.page.getByRole('dialog', { name: 'Chart from words' })
  await bench.button('Use my own words', dialog).click()
  expect(await dialog.getByRole('textbox', { name: /Paste or write/ }).inputValue()).toBe(words)
  await dialog.getByRole('status').filter({ hasText: 'found' }).waitFor()
  await bench.button('Cancel', dialog).click()
  await bench.button('Chart from words').click()
  await dialog.waitFor()
})

test.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])('a rake offers no ring, at $width x $height', async (size) => {
  const { page } = bench
  await page.setViewportSize(size)
  await bench.choose('Start')
  await page.getByRole('button', { name: /Drift-net panel/ }).click()
  const offered = () => page.getByRole('button', { name: 'Ring', exact: true }).count()
  await expect.poll(offered).toBe(0)
  expect(await bench.ring.count()).toBe(0)
  await bench.show('Pegs')
  await page.getByRole('button', { name: 'Forward ›' }).waitFor()
  await bench.choose('Undo')
  await expect.poll(offered).toBe(1)
})

describe('whose the words are', () => {
  const boxes = () =>
    bench.page.evaluate(() =>
      [...document.querySelectorAll('.panes > div, .tray, .cm-scroller')].map((pane) => {
        const { x, y, width, height } = pane.getBoundingClientRect()
        return `${pane.className}: ${[x, y, width, height].map(Math.round).join(' ')}`
      }),
    )
  const sizes = [
    { width: 1440, height: 900 },
    { width: 1024, height: 768 },
  ]
  test.each(sizes)('moves no pane at $width x $height', async (size) => {
    await bench.page.setViewportSize(size)
    await bench.show('Words')
    const before = await boxes()
    expect(before.length).toBeGreaterThan(5)
    await bench.button('Make them mine').click()
    await bench.says('agree with the chart')
    expect(await boxes()).toEqual(before)
    await bench.button('Write from the chart').click()
    await bench.button('Write from the chart', bench.page.getByRole('dialog')).click()
    await bench.says('Written from the chart')
    expect(await boxes()).toEqual(before)
    // A text put in the place of all words makes them one's own too.
    await bench.text.click()
    await bench.paste(Array<string>(40).fill('Knit.').join('\n'))
    await bench.standing.filter({ hasText: 'My own words' }).waitFor()
    // Nor does what is found in it.
    const still = async () => (await boxes()).filter((box) => !/^cm-/.test(box))
    expect(await still()).toEqual(before.filter((box) => !/^cm-/.test(box)))
    const found = await boxes()
    // The room that one wants is one's own choice, and is given back.
    await bench.wholeScreen('Words')
    expect(await boxes()).not.toEqual(before)
    await bench.wholeScreen('Words')
    expect(await boxes()).toEqual(found)
  })
})
