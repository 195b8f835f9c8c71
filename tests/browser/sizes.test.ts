import { expect, test } from 'vitest'
import { openBench } from './suite'

// What is drawn follows the room it has. The browser notes when that goes in circles.

test('at 1024 x 768 panes change their room beside the fabric and no size goes in circles', async () => {
  const size = { width: 1024, height: 768 }
  const bench = await openBench(size, undefined, async (page) => {
    await page.addInitScript(() => {
      const notes: string[] = []
      Object.assign(window, { notes })
      addEventListener('error', ({ message }) => notes.push(message))
    })
  })
  const { page } = bench
  const fabric = page.getByRole('region', { name: 'Fabric', exact: true })
  await bench.choose('Start')
  await bench.button(/^Shingle/).click()
  await fabric.getByText('Tube', { exact: true }).click()
  await fabric.getByText('Whole piece', { exact: true }).click()
  for (const reading of ['Pegs', 'Fabric', 'Ring', 'Fabric']) {
    await bench.show(reading)
    if (reading !== 'Fabric') continue
    await expect.poll(() => fabric.evaluate((pane) => pane.clientHeight)).toBeGreaterThan(0)
    await page.waitForTimeout(500)
  }
  const notes = await page.evaluate(() => (window as unknown as { notes: string[] }).notes)
  expect(notes).toEqual([])
  expect(await page.getByText(/This did not work/).count()).toBe(0)
  await bench.close()
})

test.each([
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
])(
  'at $width x $height an empty chart can be started at once, and a refused number moves nothing',
  async (size) => {
    const bench = await openBench(size)
    await bench.choose('Start')
    const dialog = bench.page.getByRole('dialog', { name: 'Start' })
    const row = dialog.getByRole('form', { name: 'An empty chart' })
    const parts = () =>
      row.locator('input, select, button').evaluateAll((all) =>
        all.map((one) => {
          const { x, y, width, height } = one.getBoundingClientRect()
          const top = document.elementFromPoint(x + width / 2, y + height / 2)
          return { x, y, width, height, isSeen: one === top }
        }),
      )
    const before = await parts()
    expect(before.map(({ isSeen }) => isSeen)).toEqual([true, true, true, true])
    const pegs = row.getByLabel('Pegs')
    await pegs.fill('1')
    // The press that leaves the field is the one that starts.
    await bench.button('Start', row).hover()
    await pegs.blur()
    await dialog.getByRole('alert').filter({ hasText: 'Pegs: enter a whole number' }).waitFor()
    expect(await parts()).toEqual(before)
    // The right end of the field holds no arrows: a press there only sets the caret.
    const box = await pegs.boundingBox()
    if (!box) throw new Error('The field is not drawn')
    for (const aside of [8, 12, 16, 20])
      await bench.page.mouse.click(box.x + box.width - aside, box.y + box.height * 0.35)
    expect(await pegs.inputValue()).toBe('36')
    await bench.button('Start', row).click()
    await dialog.waitFor({ state: 'hidden' })
    await bench.close()
  },
)
