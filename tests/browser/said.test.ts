import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

// What is said in passing has a line of its own, is gone when it is no longer true, and is seen in
// the dialog that says it.

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const said = () => bench.page.locator('.said:not(.in-dialog)')

/** What lies under what is said. */
const covered = () =>
  said().evaluate((line) => {
    const box = line.querySelector('span')?.getBoundingClientRect()
    if (!box || box.width === 0) return ['nothing is said']
    const parts = document.querySelectorAll(
      '.tray, header, .readings, button, input, .view, .place-line',
    )
    return [...parts]
      .filter((part) => {
        if (line.contains(part)) return false
        const { left, right, top, bottom, width } = part.getBoundingClientRect()
        return (
          width > 0 &&
          Math.min(right, box.right) - Math.max(left, box.left) > 1 &&
          Math.min(bottom, box.bottom) - Math.max(top, box.top) > 1
        )
      })
      .map((part) => part.className)
  })

/** Paint a purl over the first cross of the starter. */
async function paintOverACross(): Promise<void> {
  const box = await bench.rows.boundingBox()
  if (!box) throw new Error('The chart is not drawn')
  for (let along = 0.05; along < 1; along += 0.02) {
    for (let up = 0.1; up < 1; up += 0.15) {
      await bench.page.mouse.move(box.x + box.width * along, box.y + box.height * up)
      await bench.page.mouse.down()
      await bench.page.mouse.up()
      if (/brings? (it|them) back/.test((await said().textContent()) ?? '')) return
    }
  }
  throw new Error('No cross was met')
}

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]
test.each(sizes)('it covers nothing at $width x $height', async (size) => {
  await bench.page.setViewportSize(size)
  await bench.press('p')
  await said().getByText('In hand: purl').waitFor()
  expect(await covered()).toEqual([])
  await bench.press('Enter')
  await bench.button('Undo').first().click()
  await said()
    .getByText(/^Undone/)
    .waitFor()
  expect(await covered()).toEqual([])
})

test('it is gone when it is no longer true', async () => {
  await bench.press('p')
  await paintOverACross()
  await said().getByRole('button', { name: 'Undo' }).waitFor()
  expect(await covered()).toEqual([])
  const title = bench.page.getByLabel('Title')
  await title.fill('Another title')
  await title.blur()
  await expect.poll(() => said().innerText()).toBe('')
})

test('it is gone after a while', async () => {
  await bench.page.clock.install()
  await bench.press('p')
  await said().getByText('In hand: purl').waitFor()
  await bench.page.clock.runFor(10_000)
  await expect.poll(() => said().innerText()).toBe('')
})

test('what a dialog says is seen in it', async () => {
  await bench.choose('Booklet')
  const dialog = bench.page.getByRole('dialog', { name: 'Booklet' })
  await bench.download(() => bench.button(/PDF/, dialog).click())
  await dialog
    .getByRole('status')
    .filter({ hasText: /^Saved as .*\.pdf\.$/ })
    .waitFor()
  // Once, not a second time half behind it.
  expect(await said().isVisible()).toBe(false)
})
