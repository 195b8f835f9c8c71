import type { Locator } from 'playwright-core'
import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

// What is pressed most is in view without scrolling, at the sizes of usual screens.

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

/** By how many px it lies outside of what is seen of each box that it scrolls in, and of the window. */
const cutBy = (what: Locator) =>
  what.evaluate((element) => {
    const box = element.getBoundingClientRect()
    let most = Math.max(box.bottom - innerHeight, box.right - innerWidth, -box.top, -box.left)
    for (let at = element.parentElement; at; at = at.parentElement) {
      if (getComputedStyle(at).overflowY === 'visible') continue
      const around = at.getBoundingClientRect()
      most = Math.max(
        most,
        box.bottom - around.bottom,
        around.top - box.top,
        box.right - around.right,
        around.left - box.left,
      )
    }
    return Math.max(0, Math.round(most))
  })

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]
test.each(sizes)(
  'the first mend and the commands of the place, at $width x $height',
  async (size) => {
    await bench.page.setViewportSize(size)
    // A decrease with nothing to make up for it, in the middle of the starter.
    await bench.press('Home', 'ArrowUp', 'ArrowUp', 'ArrowUp', '/', 'Enter')
    const first = bench.findings.getByRole('listitem').first()
    await first.getByText(/needs \d+ stitches/).waitFor()
    for (const mend of await first.getByRole('group', { name: 'Mends' }).getByRole('button').all())
      expect(await cutBy(mend)).toBe(0)
    const line = bench.page.getByRole('region', { name: 'Place' })
    const inLine = await line
      .getByRole('button', { name: /^(Add|below|after)/ })
      .filter({ visible: true })
      .all()
    expect(inLine.length).toBeGreaterThan(1)
    for (const button of inLine) expect(await cutBy(button)).toBe(0)
    const all = await bench.openPlace()
    for (const name of ['Fill the loom', 'Remove repeat', 'Start round here'])
      expect(await cutBy(bench.button(name, all)), name).toBe(0)
    expect(await cutBy(all.locator('summary'))).toBe(0)
  },
)

test('a long name of a cut cross in “How it is worked” leaves the head of the words in view', async () => {
  await bench.startEmpty(40, 4)
  await bench.page.getByLabel('Search stitches').fill('2/2 LC')
  await bench.button(/^2\/2 LC/).click()
  await bench.press('Home', ...Array<string>(3).fill('ArrowLeft'), 'Enter')
  await bench.press('Home', ...Array<string>(7).fill('Shift+ArrowLeft'), 'Shift+r')
  // Marked beside the cross, so that the mark does not take it whole; what would be cut is asked first.
  await bench.press('Home', 'ArrowUp', ...Array<string>(4).fill('Shift+ArrowLeft'), 'r', 'Enter')
  await bench.words.getByText('How it is worked').click()
  await bench.words.locator('dt').filter({ hasText: 'cut at the edge' }).waitFor()
  for (const size of sizes) {
    await bench.page.setViewportSize(size)
    await bench.show('Words')
    expect(await cutBy(bench.button('Whole screen: Words'))).toBe(0)
    for (const part of await bench.words.locator('dd').all())
      expect(await part.evaluate((one) => one.getBoundingClientRect().right <= innerWidth)).toBe(
        true,
      )
  }
})

test('“Fit” shows the whole chart, however many pegs it has', async () => {
  await bench.startEmpty(200, 2)
  await bench.button('Fit', bench.page.getByRole('group', { name: 'Zoom of Rows' })).click()
  await expect.poll(() => cutBy(bench.rows)).toBe(0)
})

test('on a phone the row of readings shows the one that is chosen', async () => {
  await bench.page.setViewportSize({ width: 390, height: 844 })
  const readings = bench.page.getByRole('navigation', { name: 'Readings' })
  // By keys, which scroll nothing of themselves once the row was moved away under them.
  for (const name of ['Findings', 'Rows']) {
    const chosen = bench.button(new RegExp(`^${name}`), readings)
    await chosen.focus()
    await readings.evaluate((row, to) => (row.scrollLeft = to), name === 'Findings' ? 0 : 1000)
    await bench.page.keyboard.press('Enter')
    await expect.poll(() => cutBy(chosen)).toBe(0)
  }
})

test('the line of the empty chart stands where it stood, once pieces are kept', async () => {
  const empty = async () => {
    await bench.choose('Start')
    const dialog = bench.page.getByRole('dialog', { name: 'Start' })
    const box = await bench.button('Start', dialog).last().boundingBox()
    await bench
      .button(/Drift-net panel/, dialog)
      .first()
      .click()
    await dialog.waitFor({ state: 'hidden' })
    return box
  }
  const before = await empty()
  for (let pieces = 0; pieces < 2; pieces++) {
    await bench.press('p', 'Enter')
    await bench.page.getByText(/^Kept in this browser/).waitFor()
    await empty()
  }
  expect(await empty()).toEqual(before)
})

test.each(sizes)(
  'no key covers a sign of the tray, and what is in hand stands clear of its ends, at $width x $height',
  async (size) => {
    await bench.page.setViewportSize(size)
    await bench.page.getByLabel('Search stitches').fill('2/2 LC')
    await bench.button(/^2\/2 LC/).click()
    const tray = bench.page.getByRole('region', { name: 'Stitch tray' })
    await tray.getByRole('button', { name: /^2\/2 LC/ }).waitFor()
    const covered = await tray.locator('.stitch').evaluateAll((all) =>
      all
        .filter((one) => {
          const key = one.querySelector('kbd')?.getBoundingClientRect()
          const sign = one.querySelector('svg')?.getBoundingClientRect()
          return (
            key &&
            sign &&
            key.bottom > sign.top + 0.5 &&
            key.left < sign.right &&
            key.right > sign.left
          )
        })
        .map((one) => one.textContent),
    )
    expect(covered).toEqual([])
    const room = () =>
      tray.locator('.stitch.chosen').evaluate((one) => {
        const list = one.closest('ul')
        if (!list) return -1
        const [box, around] = [one.getBoundingClientRect(), list.getBoundingClientRect()]
        const isLast = one.parentElement === list.lastElementChild
        return (
          Math.round(Math.min(box.left - around.left, around.right - box.right)) + (isLast ? 48 : 0)
        )
      })
    if (size.width < 1200) await expect.poll(room).toBeGreaterThanOrEqual(48)
    else for (const one of await tray.locator('.stitch').all()) expect(await cutBy(one)).toBe(0)
  },
)

test('four lines of the words are seen beside the findings', async () => {
  await bench.choose('Start')
  const start = bench.page.getByRole('dialog', { name: 'Start' })
  await bench.button(/Shingle mitt/, start).click()
  await start.waitFor({ state: 'hidden' })
  const text = await bench.words.locator('.host').boundingBox()
  expect(text?.height).toBeGreaterThanOrEqual(4.5 * 24)
})

test('what differs at the caret is told once, in the findings, with its mends, and moves nothing', async () => {
  const { page } = bench
  const right = (await bench.wordLines()).join('\n')
  await bench.text.click()
  await bench.paste(right.replace('(36 sts)', '(35 sts)').replace('p1, k4, p1', 'p1, k3, p2'))
  await bench.says('differ from the chart')
  const line = bench.text.locator('.cm-line', { hasText: 'p2, k1, p1' }).last()
  // From a line without a finding into one that has one.
  await bench.text.locator('.cm-line', { hasText: 'Rep Rnd 1' }).first().click()
  const stands = () =>
    page
      .locator('.words .host, .findings header, .findings .mends')
      .evaluateAll((all) =>
        all.map((one) => [one.getBoundingClientRect().x, one.getBoundingClientRect().bottom]),
      )
  const before = await stands()
  await line.locator('.cm-lintRange').first().click()
  const mends = bench.findings.getByRole('group', { name: 'Mends' })
  await mends.getByRole('button', { name: /^Rewrite Rnds.* from the chart$/ }).waitFor()
  await mends.getByRole('button', { name: /^Change the chart/ }).waitFor()
  expect(await stands()).toEqual(before)
  for (const mend of await mends.getByRole('button').all()) expect(await cutBy(mend)).toBe(0)
  expect(
    await page
      .getByText(/the words purl pegs/)
      .filter({ visible: true })
      .count(),
  ).toBe(1)
})
