import type { Locator } from 'playwright-core'
import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

/** What has the focus and wears a frame for it; writing fields, which show it always, left out. */
const framed = () =>
  bench.page.evaluate(() => {
    const element = document.activeElement
    if (!element || element === document.body || element.shadowRoot) return []
    if (element.matches('input:not([type=checkbox], [type=radio]), select, textarea')) return []
    const { outlineStyle } = getComputedStyle(element)
    return outlineStyle === 'none' ? [] : [element.outerHTML.slice(0, 80)]
  })

/** How wide the frame of the current place is drawn in a chart, and what glows round it, px. */
const placeFrame = (chart: Locator) =>
  chart.evaluate((svg) => {
    const [glow, frame] = [...svg.querySelectorAll('.place.glow, .place:not(.glow, .under)')].map(
      (path) => getComputedStyle(path),
    )
    return {
      frame: parseFloat(frame?.strokeWidth ?? '0'),
      glow: glow?.stroke === 'none' ? 0 : parseFloat(glow?.strokeWidth ?? '0'),
    }
  })

async function clickOn(chart: Locator, along: number): Promise<void> {
  const box = await chart.boundingBox()
  if (!box) throw new Error('The chart is not drawn')
  await bench.page.mouse.click(box.x + box.width * along, box.y + box.height / 2)
}

test('no frame stands round a chart, by pointer or by key: the place shows the focus', async () => {
  const tray = bench.page.getByRole('region', { name: 'Stitch tray' })
  await bench.show('Ring')
  for (const chart of [bench.rows, bench.ring]) {
    // In the ring its middle has no cells.
    const along = chart === bench.ring ? 0.12 : 0.4
    await clickOn(chart, along)
    expect(await framed()).toEqual([])
    await bench.button(/^p\s*, purl/, tray).click()
    expect(await framed()).toEqual([])
    await clickOn(chart, along + 0.05)
    for (const key of ['ArrowUp', 'y', 'Enter']) await bench.page.keyboard.press(key)
    expect(await framed()).toEqual([])
    await bench.choose('Undo')
    expect(await framed()).toEqual([])
  }
  await bench.show('Fabric')
  const fabric = bench.page.getByRole('application', { name: /^Fabric/ })
  await clickOn(fabric, 0.4)
  await bench.page.keyboard.press('ArrowUp')
  expect(await framed()).toEqual([])
})

test('the frame of the place tells which drawing the keys go to', async () => {
  await bench.show('Ring')
  await bench.ring.focus()
  const away = await placeFrame(bench.rows)
  await bench.press('ArrowUp')
  const there = await placeFrame(bench.rows)
  expect(there.frame).toBeGreaterThan(away.frame)
  expect(there.glow).toBeGreaterThan(there.frame)
  expect(away.glow).toBe(0)
})
