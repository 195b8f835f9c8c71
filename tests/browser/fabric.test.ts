import type { Locator } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'
import { violations } from './violations'

let bench: BenchPage
eachTestWithBench(async (opened) => {
  bench = opened
  await bench.show('Fabric')
  await fabric().waitFor()
})

const fabric = (): Locator => bench.page.getByRole('application', { name: /^Fabric\./ })
const pane = (): Locator => bench.page.getByRole('region', { name: 'Fabric' })
const press = async (...keys: string[]): Promise<void> => {
  await fabric().focus()
  for (const key of keys) await bench.page.keyboard.press(key)
}
/** What the fabric says of itself. */
const label = async (): Promise<string> => (await fabric().getAttribute('aria-label')) ?? ''
/** The peg in the middle, as the slider says. */
const middle = (): Promise<string | null> =>
  pane().getByRole('slider', { name: 'Turn' }).getAttribute('aria-valuetext')
const times = (key: string, count: number): string[] => Array.from({ length: count }, () => key)

/** Wait until the rows beyond the view have been added too. */
async function allDrawn(rows: number): Promise<void> {
  // Besides the rows: what lies behind them, and the cast-on.
  await bench.page.waitForFunction(
    (count) => document.querySelectorAll('svg.fabric > g:not(.marks)').length >= count,
    rows + 2,
  )
}

describe('the fabric of the chart', () => {
  test('has all its rounds, and says how large they are by the gauge', async () => {
    await allDrawn(47)
    // 36 pegs at 22 stitches and 47 rounds at 31 rows in 10 cm.
    expect(await label()).toMatch(/47 rounds on 36 pegs/)
    expect(await label()).toMatch(/16.4 cm round and 15.2 cm high by the gauge, unstretched/)
    expect(await label()).toMatch(/Now at round 1, peg 1: knit\.$/)
  })

  test('draws a changed row anew and keeps the others', async () => {
    await bench.startEmpty(12, 20)
    await allDrawn(20)
    await press(...times('ArrowUp', 10))
    await bench.page.evaluate(() => {
      const changed = new Set<Element>()
      Object.assign(globalThis, { changed })
      const watch = new MutationObserver((records) => {
        for (const { target } of records) {
          const row = target instanceof Element ? target.closest('svg.fabric > g') : null
          if (row && !row.classList.contains('marks')) changed.add(row)
        }
      })
      for (const svg of document.querySelectorAll('svg.fabric'))
        watch.observe(svg, { attributes: true, childList: true, subtree: true })
    })
    await bench.rows.focus()
    await bench.page.keyboard.press('Enter')
    await expect.poll(label).toMatch(/round 11, peg 1: purl/)
    const changed = await bench.page.evaluate(
      () => (globalThis as unknown as { changed: Set<Element> }).changed.size,
    )
    // The row itself; the one above is drawn through its loop.
    expect(changed).toBeGreaterThan(0)
    expect(changed).toBeLessThanOrEqual(2)
  })

  test('has one place with the charts', async () => {
    await press('ArrowUp', 'ArrowUp', 'ArrowLeft')
    expect(await label()).toMatch(/Now at round \d+, peg 2: /)
    await expect
      .poll(() => bench.rows.getAttribute('aria-label'))
      .toContain((/Now at (.*)\.$/.exec(await label()) ?? [])[1])
  })

  test('a press on it sets the place', async () => {
    const box = await fabric().boundingBox()
    if (!box) throw new Error('The fabric has no box')
    // Peg 1 of a clockwise ring is at the right, the cast-on at the bottom.
    await fabric().click({ position: { x: box.width * 0.02 + 6, y: box.height * 0.5 } })
    expect(await label()).toMatch(/peg 3[56]: /)
    expect(await label()).not.toMatch(/row 1,/)
  })

  test('is saved as SVG', async () => {
    const { name, bytes } = await bench.download(() => bench.button('Save as SVG', pane()).click())
    expect(name).toMatch(/lamp-room-cuff.*-fabric\.svg$/i)
    const text = new TextDecoder().decode(bytes)
    expect(text).toContain('<title id="title">Lamp-room cuff: fabric</title>')
    // Cast-on, 47 rounds, and what lies behind them.
    expect(text.match(/<g /g)).toHaveLength(49)
  })
})

describe('the tube', () => {
  test('is turned by keys, by the slider and by dragging it sideways', async () => {
    await bench.button('Tube', pane()).click()
    await expect.poll(label).toContain('the front half of the tube')
    const start = await middle()
    await press(']')
    expect(await middle()).not.toBe(start)
    await press('[')
    expect(await middle()).toBe(start)
    await pane().getByRole('slider', { name: 'Turn' }).fill('4')
    expect(await middle()).toBe('Peg 5 in the middle')
    const box = await fabric().boundingBox()
    if (!box) throw new Error('The fabric has no box')
    const { mouse } = bench.page
    const place = (await label()).slice(-40)
    await mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await mouse.down()
    await mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2, { steps: 6 })
    await mouse.up()
    // Higher pegs lie to the left of a clockwise ring: they come to the front.
    const peg = Number(/\d+/.exec((await middle()) ?? '')?.[0])
    expect(peg).toBeGreaterThan(5)
    expect(peg).toBeLessThan(20)
    expect((await label()).slice(-40)).toBe(place)
  })

  test('turns to the place when that is moved behind it', async () => {
    await bench.button('Tube', pane()).click()
    await bench.rows.focus()
    await bench.page.keyboard.press('End')
    await expect.poll(middle).toBe('Peg 36 in the middle')
  })
})

describe('strands that are followed', () => {
  /** Items in the tones of strands, by tone and row from the bottom. */
  const tonesByRow = () =>
    bench.page.evaluate(() =>
      [...document.querySelectorAll('svg.fabric > g:not(.marks)')]
        .filter((row) => !row.querySelector('text'))
        .map((row) =>
          [1, 2, 3, 4].filter((tone) => row.querySelector(`.ink-tone-${tone}`) !== null).join(),
        )
        .slice(1),
    )

  test('those of a cross keep their tones over all rows, and are let go', async () => {
    await allDrawn(47)
    // Rounds 1 to 8 are one row of the chart; the third row above it has the crosses.
    await press('ArrowUp', 'ArrowUp', 'ArrowUp', ...times('ArrowLeft', 3))
    expect(await label()).toContain('left cross, two over two')
    await bench.button('Follow this cross', pane()).click()
    const list = pane().getByRole('list', { name: 'Strands that are followed' })
    await list.getByText('2 strands').first().waitFor()
    expect(await list.getByRole('listitem').count()).toBe(2)
    const tones = await tonesByRow()
    expect(tones).toHaveLength(48)
    expect(new Set(tones.slice(1))).toEqual(new Set(['1,2']))
    // Not by tone alone: numbers at both ends of each.
    const numbers = await fabric().locator('text').allTextContents()
    expect(numbers.sort()).toEqual(['1', '1', '2', '2'])
    await bench.button('Stop following strand 1', pane()).click()
    expect(new Set((await tonesByRow()).slice(1))).toEqual(new Set(['2']))
  })

  test('a fifth is refused with the reason', async () => {
    for (let i = 0; i < 4; i++) await press('f', 'ArrowLeft')
    await press('f')
    await bench.page.getByText('Four strands are followed, the most there can be.').waitFor()
  })
})

test('of several charts the whole piece is shown first, with all its rows', async () => {
  await bench.choose('Start')
  await bench.button(/^Fog-watch socks/).click()
  const rows = async () => Number(/(\d+) rounds on/.exec(await label())?.[1])
  await expect.poll(rows).toBe(160)
  await bench.button('Chart', pane()).click()
  await expect.poll(rows).toBe(1)
})

describe.each([
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
])('$width x $height', (size) => {
  test('it meets WCAG 2.2 AA', async () => {
    const { page } = bench
    await page.setViewportSize(size)
    if (size.width < 760) await bench.show('Fabric')
    await bench.button('Tube', pane()).click()
    await press('f')
    expect(await violations(bench)).toEqual([])
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(over).toBe(0)
  })
})
