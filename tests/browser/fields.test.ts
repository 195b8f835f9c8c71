import type { Locator } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { walkFields } from './fieldWalk'
import { eachTestWithBench } from './suite'

// What has the focus for writing keeps it, and its keys reach nothing else: for every field that
// is found on a panel or in a dialog, with a real mouse and real keys.

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

/** Click a cell in the middle of the chart, as a hand does before it goes to a field. */
async function clickACell(): Promise<void> {
  const box = await bench.rows.boundingBox()
  if (!box) throw new Error('The chart is not drawn')
  await bench.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
}
async function openStarter(name: RegExp): Promise<void> {
  await bench.choose('Start')
  await bench.page.getByRole('button', { name }).click()
  await bench.page.getByText(/^Kept in this browser/).waitFor()
}
const dialog = () => bench.page.locator('dialog[open]')
/** What folds is unfolded, so that its fields are there. */
async function unfold(scope: Locator): Promise<void> {
  for (const summary of await scope.locator('details:not([open]) > summary').all())
    await summary.click()
}

test('every field beside the charts', async () => {
  await clickACell()
  expect(await walkFields(bench, bench.page.locator('.bench'))).toEqual(
    expect.arrayContaining(['Title', 'Words', 'Search stitches']),
  )
  const all = await bench.openPlace()
  await unfold(all)
  expect(await walkFields(bench, all)).toEqual(
    expect.arrayContaining(['Worked', 'Pegs from', 'to', 'Direction', 'At the end']),
  )
})

test('the fields of my own words', async () => {
  await clickACell()
  await bench.button('Make them mine').click()
  // A size to read is asked for where the words state sizes.
  await bench.text.click()
  await bench.page.keyboard.press('Control+End')
  await bench.page.keyboard.type('\nCast on 36 (40, 44) sts.')
  await unfold(bench.words)
  const walked = await walkFields(bench, bench.words)
  expect(walked).toContain('Words')
  expect(walked.join()).toMatch(/Size/)
})

test('every field of the fabric and of the pegs', async () => {
  await clickACell()
  expect(await walkFields(bench, bench.page.locator('.right'))).toHaveLength(1)
  await bench.show('Pegs')
  await bench.page.getByLabel('Walk through').waitFor()
  const walked = await walkFields(bench, bench.page.locator('.pegs'))
  expect(walked).toEqual(expect.arrayContaining(['Walk through', 'Move', 'Pace']))
})

test('the fields of a cross that is made', async () => {
  await clickACell()
  await bench.button('Make a cross').click()
  const walked = await walkFields(bench, bench.page.locator('[popover]:popover-open'))
  expect(walked).toEqual(['In front', 'Behind', 'Leans', 'Worked'])
})

describe('every field of the dialog', () => {
  const dialogs: [string, string[]][] = [
    ['Start', ['Loom', 'Pegs', 'Rows']],
    ['Loom and swatch', ['Title', 'Designer', 'Notes', 'Pegs', 'Stitches in 10 cm', 'Terms']],
    ['Booklet', ['Paper']],
  ]
  test.each(dialogs)('%s', async (name, known) => {
    await clickACell()
    await bench.choose(name)
    await dialog().waitFor()
    const ticks = dialog().locator('input[type=checkbox]')
    for (const tick of await ticks.all()) if (!(await tick.isChecked())) await tick.check()
    const walked = await walkFields(bench, dialog())
    expect(walked).toEqual(expect.arrayContaining(known))
  })

  test('Chart from words', async () => {
    await clickACell()
    await bench.button('Chart from words').click()
    await dialog().getByLabel('Pegs').waitFor()
    const walked = await walkFields(bench, dialog())
    expect(walked).toEqual(
      expect.arrayContaining(['Paste or write the instructions', 'Loom', 'Pegs', 'Worked']),
    )
  })

  test.each([/Fog.watch/i, /Drift-net/i])('Steps, of %s', async (starter) => {
    await openStarter(starter)
    await clickACell()
    await bench.choose('Steps')
    await dialog().waitFor()
    for (const kind of ['Note', 'Plain rows', 'Pegs you work'])
      await bench.button(kind, dialog().getByRole('group', { name: 'Add a step' })).click()
    const walked = await walkFields(bench, dialog())
    expect(walked).toEqual(
      expect.arrayContaining([
        'Step 1: first peg',
        'Step 2: times',
        'Rows of the new chart',
        'Make a',
        'Pace, plain stitches a minute',
        'Weight of the swatch, grams',
      ]),
    )
    const kinds = ['note', 'stitch', 'how many rows', 'which pegs']
    for (const kind of kinds) expect(walked.join()).toMatch(new RegExp(`Step \\d+: ${kind}`))
    expect(walked.join()).toContain('Name of the chart')
  })
})

test('the fields of a phone', async () => {
  await bench.page.setViewportSize({ width: 390, height: 844 })
  await clickACell()
  expect(await walkFields(bench, bench.page.locator('.bench'))).toContain('Search stitches')
  const all = await bench.openPlace()
  await unfold(all)
  const walked = await walkFields(bench, all)
  expect(walked).toEqual(
    expect.arrayContaining(['Worked', 'Pegs from', 'to', 'Direction', 'At the end']),
  )
  await bench.page.keyboard.press('Escape')
  await bench.show('Words')
  expect(await walkFields(bench, bench.words)).toContain('Words')
})
