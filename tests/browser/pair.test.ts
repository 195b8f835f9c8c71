import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'
import { violations } from './violations'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const follows = 'This is the second of the pair; it follows the first.'
const pair = () => bench.page.getByRole('region', { name: 'Pair' })
const dialog = (name: string) => bench.page.getByRole('dialog', { name })

async function makePair(): Promise<void> {
  await bench.choose('Loom and swatch')
  await dialog('Loom and swatch').getByLabel('Made').selectOption('mirrored')
  await bench.page.keyboard.press('Escape')
  await pair().waitFor()
}

const kept = () => bench.page.getByText(/^Kept in this browser/)
const title = () => bench.page.getByRole('textbox', { name: 'Title' })
const status = () => bench.page.getByRole('status')

describe('a mirrored pair', () => {
  test('shows the second in every reading, marked and read only', async () => {
    await makePair()
    const before = await bench.wordLines()
    await bench.button('Second', pair()).click()
    await pair().getByText('The mirror image of the first.').waitFor()
    expect(await title().inputValue()).toBe('Lamp-room cuff, second')
    expect(await title().isEditable()).toBe(false)
    await bench.words
      .getByText('Rnd 1: *p1, k1, p1, k1, p2, k1, p1, k1; rep from * to end.')
      .waitFor()
    const second = await bench.wordLines()
    expect(second).not.toEqual(before)

    // By key, by pointer and in the words: nothing changes, and it is said why.
    const chart = await bench.rows.innerHTML()
    await bench.press('p', 'Enter')
    await status().getByText(follows).waitFor()
    await bench.rows.click({ position: { x: 200, y: 60 } })
    await bench.text.click()
    await bench.page.keyboard.type('x')
    expect(await bench.wordLines()).toEqual(second)
    await bench.press('Insert')
    expect((await bench.rows.innerHTML()).length).toBe(chart.length)
    expect(await bench.wordLines()).toEqual(second)

    await bench.button('First', pair()).click()
    await expect.poll(() => bench.wordLines()).toEqual(before)
  })

  test('is kept as the first, also while the second is looked at', async () => {
    await makePair()
    await bench.button('Second', pair()).click()
    await kept().waitFor()
    const file = await bench.download(() => bench.choose('Save'))
    const saved = JSON.parse(new TextDecoder().decode(file.bytes)) as {
      title: string
      pair: string
    }
    expect(saved).toMatchObject({ title: 'Lamp-room cuff', pair: 'mirrored' })
    await bench.page.reload()
    await pair().waitFor()
    // Where it was: the second is looked at again.
    expect(await bench.button('Second', pair()).getAttribute('aria-pressed')).toBe('true')
    await bench.button('First', pair()).click()
    expect(await title().inputValue()).toBe('Lamp-room cuff')
  })

  test('becomes two pieces when the second is made one of its own', async () => {
    await makePair()
    await bench.button('Second', pair()).click()
    const mirrored = await bench.wordLines()
    await bench.button('Make it a piece of its own').click()
    await bench.button('Make the copy', dialog('Make it a piece of its own')).click()
    await pair().waitFor({ state: 'hidden' })
    expect(await title().inputValue()).toBe('Lamp-room cuff, second')
    await expect.poll(() => bench.wordLines()).toEqual(mirrored)
    expect(await title().isEditable()).toBe(true)
    // Left without an edit, it stays kept, and so does the first.
    await kept().waitFor()
    await bench.choose('Start')
    await bench.button(/^Drift/, dialog('Start')).click()
    await expect.poll(() => title().inputValue()).toMatch(/^Drift/)
    await bench.choose('My pieces')
    await dialog('My pieces').getByText('Lamp-room cuff, second').first().waitFor()
    await dialog('My pieces').getByText('Lamp-room cuff', { exact: true }).last().waitFor()
  })
})

describe('turning the piece round', () => {
  test('is done by keyboard: the preview, what changes, and one step back', async () => {
    const { page } = bench
    const opener = bench.menu('Loom and swatch')
    await opener.focus()
    await page.keyboard.press('Enter')
    const command = bench.button(/^Reverse the working direction/)
    await command.focus()
    await page.keyboard.press('Enter')
    const preview = dialog('Reverse the working direction')
    await preview.getByText(/^Peg 1 stands at the left instead of the right/).waitFor()
    await page.keyboard.press('Escape')
    await preview.waitFor({ state: 'hidden' })
    expect(await command.evaluate((element) => element === document.activeElement)).toBe(true)
    await page.keyboard.press('Enter')
    const act = bench.button('Reverse the direction', preview)
    await act.focus()
    await page.keyboard.press('Enter')
    await preview.waitFor({ state: 'hidden' })
    await page.keyboard.press('Escape')
    await page.getByTitle(/36 pegs, 9.5 mm · counterclockwise/).waitFor()
    await bench.press('Control+z')
    await page.getByTitle(/36 pegs, 9.5 mm · clockwise/).waitFor()
    expect(await bench.button('Undo').getAttribute('aria-disabled')).toBe('true')
  })
})

describe.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])('at $width x $height', (size) => {
  test('pair and previews meet WCAG 2.2 AA', async () => {
    const { page } = bench
    await makePair()
    await page.setViewportSize(size)
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await bench.button('Second', pair()).click()
    expect(await violations(bench)).toEqual([])
    await bench.button('Make it a piece of its own').click()
    expect(await violations(bench)).toEqual([])
    await page.keyboard.press('Escape')
    await bench.button('First', pair()).click()
    await bench.choose('Loom and swatch')
    await bench.button(/^Mirror the design/).click()
    await dialog('Mirror the design').waitFor()
    expect(await violations(bench)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
  })
})
