import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

async function reload(): Promise<void> {
  await bench.page.reload()
  await bench.page.getByText('Back where you left it').waitFor()
}
const chosen = (pane: string) =>
  bench.page.getByRole('group', { name: pane }).locator('[aria-pressed=true]').innerText()
const steps = () => bench.page.getByRole('list', { name: 'Steps' }).getByRole('button')
const stepHere = () => bench.page.locator('.yarn-line [aria-current=step]').innerText()

test('after a reload chart, row, peg and panes are where they were', async () => {
  await bench.choose('Start')
  await bench.page.getByRole('button', { name: /Fog.watch/i }).click()
  await bench.page.getByText(/^Kept in this browser/).waitFor()
  await steps().filter({ hasText: 'Toe' }).last().click()
  const step = await stepHere()
  expect(step).toContain('Toe')
  await bench.press('ArrowUp', 'ArrowUp', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft')
  const place = await bench.place()
  const { page } = bench
  await bench.button('Pegs', page.getByRole('group', { name: 'Right pane' })).click()
  // At once, before anything else could be written down.
  await reload()
  expect(await bench.place()).toBe(place)
  expect(await stepHere()).toBe(step)
  expect(await chosen('Right pane')).toBe('Pegs')
  await page.locator('.hands label', { hasText: 'Mark' }).click()
  await bench.wholeScreen('Words')
  await reload()
  expect(await bench.button('Whole screen: Words').getAttribute('aria-pressed')).toBe('true')
  await bench.wholeScreen('Words')
  expect(await page.locator('.hands .chosen').innerText()).toBe('Mark')
  expect(await bench.place()).toBe(place)
})

test('a kept piece that is opened again shows the place it was left at', async () => {
  const openStarter = async (name: RegExp) => {
    await bench.choose('Start')
    await bench.page.getByRole('button', { name }).click()
  }
  await bench.startEmpty(24, 8)
  await bench.press('p', 'Enter', 'ArrowUp', 'ArrowUp', 'ArrowLeft')
  const place = await bench.place()
  await openStarter(/Shingle/i)
  await expect.poll(() => bench.place()).not.toBe(place)
  await bench.choose('My pieces')
  const pieces = bench.page.getByRole('dialog', { name: 'My pieces' })
  await pieces
    .getByRole('button', { name: /^Untitled/ })
    .first()
    .dblclick()
  await expect.poll(() => bench.place()).toBe(place)
})

test('the first chart as it comes has its place too', async () => {
  await bench.press('ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowLeft')
  const place = await bench.place()
  await bench.page.reload()
  await bench.rows.waitFor()
  await expect.poll(() => bench.place()).toBe(place)
})

test('a place that makes no sense is passed over', async () => {
  for (const whereabouts of [
    { row: 5e9, peg: 1e6, right: 'Cellar', reading: 7, swapped: 'yes', rows: -3 },
    { row: -1, peg: 0.5, looked: 'third' },
    'nowhere',
    null,
    [1, 2],
  ]) {
    await bench.page.addInitScript(
      (text) => localStorage.setItem('pegwright.whereabouts', text),
      JSON.stringify({ id: '', whereabouts }),
    )
    await bench.page.reload()
    await bench.rows.waitFor()
    expect(await bench.place()).toMatch(/peg \d+/i)
    expect(await chosen('Right pane')).toBe('Fabric')
  }
})

test('on a phone the same reading is shown again', async () => {
  await bench.page.setViewportSize({ width: 390, height: 844 })
  await bench.show('Words')
  await bench.page.reload()
  await expect.poll(() => bench.page.locator('.bench').getAttribute('data-reading')).toBe('Words')
})
