import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { openBench } from './suite'

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]
/** How far a chart reaches out of its view, px, in the direction in which it does so most. */
const hidden = (chart: Locator) =>
  chart.evaluate((svg) => {
    const view = svg.closest('.view')
    if (!view) throw new Error('The chart has no view')
    const { width, height } = svg.getBoundingClientRect()
    return Math.max(0, width - view.clientWidth, height - view.clientHeight)
  })

/** How high the frame of the place is, px, and whether the view has it whole. */
const placeOf = (page: Page) =>
  page.evaluate(() => {
    const view = document.querySelector('.rows .view')?.getBoundingClientRect()
    const place = document.querySelector('.rows .place:not(.glow, .under)')?.getBoundingClientRect()
    if (!view || !place) throw new Error('There is no chart')
    const isIn =
      place.left >= view.left &&
      place.right <= view.right &&
      place.top >= view.top &&
      place.bottom <= view.bottom
    return { isIn, high: Math.round(place.height) }
  })

test.each(sizes)(
  'at $width x $height a chart opens as Fit shows it, or with rows of 16 px, also after a reload',
  async (size) => {
    const bench = await openBench(size)
    const { page } = bench
    await bench.choose('Start')
    await page.getByRole('button', { name: /Fog.watch/i }).click()
    await bench.show('Ring')
    const steps = page.getByRole('list', { name: 'Steps' })
    const percents = () => page.locator('.rows .zoom button[title]').allInnerTexts()
    for (const chart of ['Heel', 'Toe', 'Leg']) {
      await bench
        .button(new RegExp(`\\b${chart}\\b`), steps)
        .first()
        .click()
      await expect.poll(() => bench.rows.getAttribute('aria-label')).toMatch(/socks/)
      const isOpened = async () => {
        const opened = async () => {
          const { high, isIn } = await placeOf(page)
          return isIn && ((await hidden(bench.rows)) === 0 ? high >= 16 : high === 16)
        }
        await expect.poll(opened, { message: chart }).toBe(true)
        await expect.poll(() => hidden(bench.ring), { message: chart }).toBe(0)
      }
      await isOpened()
      await page.reload()
      await page.getByText('Back where you left it').waitFor()
      await isOpened()
      if ((await hidden(bench.rows)) > 0) continue
      const opened = await percents()
      await bench.button('Fit', page.locator('.rows')).click()
      expect(await percents(), chart).toEqual(opened)
    }
    await bench.close()
    expect(bench.complaints).toEqual([])
  },
)

test('a chart that would be too small to read opens at its place, with rows of 16 px', async () => {
  const bench = await openBench({ width: 1024, height: 768 })
  const { page } = bench
  await bench.startEmpty(96, 60)
  await expect.poll(() => placeOf(page)).toEqual({ isIn: true, high: 16 })
  // A pane that gets another size keeps the place in sight.
  await page.setViewportSize({ width: 1024, height: 620 })
  await expect.poll(() => placeOf(page)).toEqual({ isIn: true, high: 16 })
  await bench.close()
  expect(bench.complaints).toEqual([])
})
