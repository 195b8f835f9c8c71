import { expect, test } from 'vitest'
import { openBench } from './suite'
import type { BenchPage } from './bench'
import { hands, type Finger } from './hands'

const take = ({ page }: BenchPage, hand: string) =>
  page.locator('.hands label', { hasText: hand }).tap()
const marked = ({ page }: BenchPage) =>
  page.evaluate(() => {
    const box = document.querySelector('.rows .marked')?.getBoundingClientRect()
    return box && { width: box.width, height: box.height }
  })

/** What is drawn, without the marks of the place. */
const cells = ({ rows }: BenchPage) =>
  rows.evaluate((svg) =>
    [...svg.children].map((one) => (one.matches('.marks') ? '' : one.outerHTML)).join(''),
  )

const sizes = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
]
test.each(sizes)('Mark and two fingers at $width x $height', async (size) => {
  const bench = await openBench(size, { hasTouch: true, isMobile: true })
  await bench.startEmpty(20, 16)
  const { draw, tap } = await hands(bench)
  const { page } = bench
  const cell = await page.locator('.rows .place.glow').boundingBox()
  if (!cell) throw new Error('The place is not drawn')
  const [width, height] = [cell.width, cell.height]
  const first = { x: cell.x + width / 2, y: cell.y + height / 2 }
  /** So many cells on from the first: peg 1 is at the right, below. */
  const at = (pegs: number, rows: number): Finger => ({
    x: first.x - pegs * width,
    y: first.y - rows * height,
  })
  await take(bench, 'Mark')
  await draw([at(1, 1)], [at(10, 6)])
  expect(await bench.place()).toMatch(/^round 7, peg 11/)
  const drawn = await marked(bench)
  expect(Math.round((drawn?.width ?? 0) / width)).toBe(10)
  expect(Math.round((drawn?.height ?? 0) / height)).toBe(6)
  // The first tap says where, the second how far, the third begins anew.
  await tap(at(3, 2))
  expect(await marked(bench)).toBeUndefined()
  await tap(at(6, 2))
  expect(Math.round(((await marked(bench))?.width ?? 0) / width)).toBe(4)
  await tap(at(2, 2))
  expect(await marked(bench)).toBeUndefined()
  expect(await bench.place()).toMatch(/^round 3, peg 3/)
  // Two fingers zoom and pan in every hand, and put nothing into the chart.
  const percent = async () => {
    const title = await page.locator('.rows .zoom button[title]').getAttribute('title')
    return Number(/(\d+) %/.exec(title ?? '')?.[1])
  }
  for (const hand of ['Mark', 'Paint', 'Plain', 'Pick up']) {
    await take(bench, hand)
    await bench.button('Fit', page.locator('.rows')).tap()
    const was = await percent()
    const box = await bench.rows.boundingBox()
    if (!box) throw new Error('The chart is not drawn')
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await draw(
      [
        { x: x - 40, y },
        { x: x + 40, y },
      ],
      [
        { x: x - 100, y },
        { x: x + 100, y },
      ],
    )
    await expect.poll(percent).toBeGreaterThan(was * 2)
    const scrolled = () =>
      page.locator('.rows .view').evaluate((view) => view.scrollLeft + view.scrollTop)
    const from = await scrolled()
    await draw(
      [
        { x: x - 40, y },
        { x: x + 40, y },
      ],
      [
        { x: x - 10, y: y + 30 },
        { x: x + 70, y: y + 30 },
      ],
    )
    await expect.poll(scrolled).toBeLessThan(from)
    expect(await bench.place()).toMatch(/^round 3, peg 3/)
  }
  await take(bench, 'Paint')
  await bench.button('Fit', page.locator('.rows')).tap()
  const before = await cells(bench)
  const now = await page.locator('.rows .place.glow').boundingBox()
  if (!now) throw new Error('The place is not drawn')
  const from = { x: now.x + now.width / 2, y: now.y + now.height / 2 }
  await draw([from], [{ ...from, x: from.x - 4 * now.width }])
  expect(await cells(bench)).not.toBe(before)
  // A drag is one step to take back.
  await bench.menu('Undo').tap()
  await expect.poll(() => cells(bench)).toBe(before)
  await bench.close()
  expect(bench.complaints).toEqual([])
})
