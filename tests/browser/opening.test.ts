import type { Locator } from 'playwright-core'
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

test.each(sizes)(
  'at $width x $height a chart opens as Fit shows it, also after a reload',
  async (size) => {
    const bench = await openBench(size)
    const { page } = bench
    await bench.menu('Start').click()
    await page.getByRole('button', { name: /Fog.watch/i }).click()
    const steps = page.getByLabel('Chart on the bench')
    if (!(await steps.isVisible())) await bench.menu('Steps').click()
    const percents = () => page.locator('.zoom button[title]').allInnerTexts()
    for (const chart of ['Heel', 'Toe', 'Leg']) {
      await steps.selectOption(chart)
      await expect.poll(() => bench.rows.getAttribute('aria-label')).toMatch(/socks/)
      const isOpened = async () => {
        await expect.poll(() => hidden(bench.rows), { message: chart }).toBe(0)
        await expect.poll(() => hidden(bench.ring), { message: chart }).toBe(0)
      }
      await isOpened()
      await page.reload()
      await page.getByText('Back where you left it').waitFor()
      await isOpened()
      const opened = await percents()
      for (const fit of await bench.button('Fit').all()) await fit.click()
      expect(await percents(), chart).toEqual(opened)
    }
    await bench.close()
    expect(bench.complaints).toEqual([])
  },
)

test('a chart that would be too small to read opens at its place, with cells of 16 px', async () => {
  const bench = await openBench({ width: 1024, height: 768 })
  const { page } = bench
  await bench.startEmpty(96, 60)
  const seen = () =>
    page.evaluate(() => {
      const view = document.querySelector('.rows .view')?.getBoundingClientRect()
      const place = document
        .querySelector('.rows .place:not(.glow, .under)')
        ?.getBoundingClientRect()
      if (!view || !place) throw new Error('There is no chart')
      const isIn =
        place.left >= view.left &&
        place.right <= view.right &&
        place.top >= view.top &&
        place.bottom <= view.bottom
      return { isIn, wide: Math.round(Math.max(place.width, place.height)) }
    })
  await expect.poll(seen).toEqual({ isIn: true, wide: 16 })
  // A pane that gets another size keeps the place in sight.
  await page.setViewportSize({ width: 1024, height: 620 })
  await expect.poll(seen).toEqual({ isIn: true, wide: 16 })
  await bench.close()
  expect(bench.complaints).toEqual([])
})
