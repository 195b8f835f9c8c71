import type { Locator } from 'playwright-core'
import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { PieceOnBench } from './pieceOnBench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
let piece: PieceOnBench
eachTestWithBench((opened) => {
  bench = opened
  piece = new PieceOnBench(bench)
})

/** Errors and warnings of the whole list; an empty list says that there are none. */
const found = async (): Promise<string[]> =>
  bench.findings.getByRole('button', { name: /^(error|warning|hint):/ }).allInnerTexts()

/** k1, p1 on the first two pegs, repeated over the whole loom. */
async function chartRib(): Promise<void> {
  await bench.press('Home', 'ArrowLeft', 'p', 'Enter', 'ArrowUp', 'Enter')
  await bench.press('ArrowUp', 'Enter', 'ArrowUp', 'Enter')
  await bench.press('Home', 'Shift+ArrowLeft', 'Shift+r')
}

test('a fingerless mitt from nothing: no findings, and its totals are right', async () => {
  await bench.startEmpty(24, 4)
  await piece.gauge(20, 28)
  await chartRib()
  expect(await bench.wordLines()).toEqual(['Rnds 1-4: *k1, p1; rep from * to end. (24 sts)'])

  await piece.open()
  await piece.rename('Chart', 'Cuff')
  await piece.set(2, 'times', '3')
  // 5 cm at 28 rows in 10 cm are 14 rounds.
  await piece.add('Plain rows', 2)
  await piece.inCentimetres(3, '5')
  await piece.add('Pegs you work', 3)
  await piece.field(4, 'which way').selectOption('fro')
  await piece.add('Plain rows', 4)
  await piece.set(5, 'how many rows', '12')
  await piece.add('Pegs you work', 5)
  await piece.field(6, 'which way').selectOption('round')
  await piece.add('Plain rows', 6)
  await piece.set(7, 'how many rows', '8')
  expect(await piece.steps()).toEqual([
    'Step 1: Cast on',
    'Step 2: Chart',
    'Step 3: Plain rows',
    'Step 4: Pegs you work',
    'Step 5: Plain rows',
    'Step 6: Pegs you work',
    'Step 7: Plain rows',
    'Step 8: Bind off',
  ])

  // 12 rounds of rib on 24 pegs; 14 + 12 + 8 plain rows.
  // A stitch is 5 mm wide and 3.57 mm high: a u-wrap takes 18.4 mm, a purl 17.1 (loom/length.ts).
  expect(await piece.total('2 Cuff')).toEqual(['12', 'k 144, p 144', '5.1 m'])
  expect(await piece.total('3 Plain')).toEqual(['14', 'k 336', '6.2 m'])
  expect((await piece.total('In all')).slice(0, 2)).toEqual(['46', 'k 960, p 144'])

  await piece.dialog.getByLabel('Pace').fill('20')
  await piece.dialog.getByLabel('Stitches of the swatch').fill('20')
  await piece.dialog.getByLabel('Rows of the swatch').fill('28')
  await piece.dialog.getByLabel('Weight of the swatch').fill('4')
  await piece.dialog.getByLabel('Weight of the swatch').press('Tab')
  // 336 plain stitches at 20 a minute; a swatch of 560 plain stitches weighs 4 g, these 2.4 g.
  expect((await piece.total('3 Plain')).slice(-2)).toEqual(['2.4 g', '17 min'])
  await piece.dialog.getByText('Yarn is estimated from the gauge.').waitFor()

  await piece.close()
  expect(await found()).toEqual([])
  expect(await piece.panelSteps()).toEqual([
    '1 Cast on e-wrap',
    '2 Cuff × 3 12 rounds · 4.3 cm',
    '3 Plain knit 14 rounds · 5 cm',
    '4 Pegs you work all pegs · back and forth',
    '5 Plain knit 12 rows · 4.3 cm',
    '6 Pegs you work all pegs · in the round',
    '7 Plain knit 8 rounds · 2.9 cm',
    '8 Bind off basic',
  ])
  await piece.open()
  await bench.page.getByRole('img', { name: /8 steps, 46 rows, 16.5 cm long/ }).waitFor()
})

test('a sock from nothing: heel and toe by the form, grafted, without an error', async () => {
  await bench.startEmpty(32, 4)
  await piece.gauge(24, 32)
  await chartRib()
  await piece.open()
  await piece.rename('Chart', 'Cuff')
  await piece.set(2, 'times', '4')
  await piece.add('Plain rows', 2)
  await piece.set(3, 'how many rows', '20')
  await piece.at(3)
  const heel = piece.dialog.getByRole('region', { name: 'Heel, toe or wedge' })
  // Half of 32 pegs, a third of them, 5, turned at each side: 6 in the middle.
  await heel.getByText('16 pegs: 5 turned at each side, 6 in the middle never turned.').waitFor()
  await bench.button('Add as a chart', heel).click()
  await piece.at(4)
  await piece.add('Plain rows', 4)
  await piece.inCentimetres(5, '12')
  await heel.getByLabel('Make a').selectOption('toe')
  await bench.button('Add as a chart', heel).click()
  await piece.field(7, 'bind off by').selectOption('graft')
  await piece.close()

  expect((await piece.panelSteps()).map((text) => text.split(' ').slice(0, 2).join(' '))).toEqual([
    '1 Cast',
    '2 Cuff',
    '3 Plain',
    '4 Heel',
    '5 Plain',
    '6 Toe',
    '7 Bind',
  ])
  expect(await found()).toEqual([])
  await piece.open()
  await bench.page.getByRole('img', { name: /^The piece from the side: 7 steps/ }).waitFor()
  await piece.close()

  // Heel and toe are ordinary rows: they come on the bench, and go from it by undo.
  await piece.panelStep(4).click()
  await bench.page.getByRole('status').getByText('The chart “Heel” is on the bench').waitFor()
  expect((await bench.wordLines()).join('\n')).toContain('turn')
  expect(await found()).toEqual([])

  // It is made from numbers, and anew from others.
  const lines = (await bench.wordLines()).length
  await bench.button('Change its numbers').click()
  const numbers = piece.dialog.getByRole('region', { name: 'Numbers of “Heel”' })
  await numbers.getByLabel('Turned each side').fill('4')
  await numbers.getByLabel('Turned each side').press('Tab')
  await bench.button('Make “Heel” anew', numbers).click()
  await piece.dialog.getByText('“Heel” is made anew, as a heel on 16 pegs').waitFor()
  await piece.close()
  expect((await bench.wordLines()).length).toBeLessThan(lines)
  await bench.button('Undo').click()
  await bench.button('Undo').click()
  expect(await bench.wordLines()).toEqual(['Rnds 1-4: *k1, p1; rep from * to end. (32 sts)'])
})

test('a step moved so that the piece cannot be worked is found, and its fix mends it', async () => {
  await bench.startEmpty(24, 4)
  const fine = await piece.panelSteps()
  const before = await found()
  await piece.open()
  await piece.field(1, 'cast on by').focus()
  await bench.button('Move step 1 down', piece.dialog).click()
  await piece.dialog.getByText('Step 1 (Chart) begins on an empty loom.').waitFor()
  await piece.close()
  const finding = await bench.finding('Step 1 (Chart) begins on an empty loom')
  expect(await piece.panelSteps()).not.toEqual(fine)
  const marked: Locator = piece.panelStep(1).getByText('error')
  await marked.waitFor()

  await bench.mend('Cast on all pegs before it')
  await finding.waitFor({ state: 'detached' })
  const second = await bench.finding('already have loops')
  await bench.mend('Remove step 3')
  await second.waitFor({ state: 'detached' })
  expect(await found()).toEqual(before)
  expect(await piece.panelSteps()).toEqual(fine)

  for (let steps = 0; steps < 3; steps++) await bench.button('Undo').click()
  expect(await piece.panelSteps()).toEqual(fine)
  for (let steps = 0; steps < 3; steps++) await bench.button('Redo').click()
  expect(await piece.panelSteps()).toEqual(fine)
})

test('what does not fit is refused with the reason, and undo gives all back', async () => {
  await bench.startEmpty(24, 4)
  const fine = await piece.panelSteps()
  await piece.open()
  await piece.dialog.getByRole('button', { name: 'Add an empty chart' }).click()
  await piece.rename('Chart 2', 'Chart')
  await piece.dialog.getByText('There is a chart called “Chart” already.').waitFor()

  const heel = piece.dialog.getByRole('region', { name: 'Heel, toe or wedge' })
  await heel.getByLabel('Turned each side').fill('9')
  await heel.getByLabel('Turned each side').press('Tab')
  await heel.getByText('Turn at most 5 pegs at each side').waitFor()
  await bench.button('Add as a chart', heel).focus()
  await bench.page.keyboard.press('Enter')
  expect(await piece.steps()).toHaveLength(3)
  await piece.dialog.getByRole('status').getByText('9 turned pegs at each side').waitFor()
  await bench.button('Turn 4', heel).click()
  await bench.button('Add to this chart', heel).click()
  await piece.dialog.getByText('The heel is added after row 1').waitFor()

  await bench.button('Copy step 2', piece.dialog).click()
  await bench.button('Remove step 1', piece.dialog).click()
  expect(await piece.steps()).toEqual(['Step 1: Chart', 'Step 2: Chart', 'Step 3: Bind off'])
  // The keys of undo work in the dialog, but for a text that is being written.
  await bench.button('Done', piece.dialog).focus()
  for (let edits = 0; edits < 4; edits++) await bench.page.keyboard.press('Control+z')
  expect(await piece.steps()).toEqual(['Step 1: Cast on', 'Step 2: Chart', 'Step 3: Bind off'])
  await piece.close()
  expect(await piece.panelSteps()).toEqual(fine)
})

test('the piece by keyboard alone: choose a step, open the steps, move one, take it out', async () => {
  await bench.startEmpty(24, 4)
  const { keyboard } = bench.page
  await piece.panelStep(1).focus()
  await keyboard.press('ArrowDown')
  await keyboard.press('Enter')
  expect(await piece.panelStep(2).getAttribute('aria-current')).toBe('step')
  await bench.menu('Steps').focus()
  await keyboard.press('Enter')
  await piece.field(2, 'times').focus()
  await keyboard.press('Alt+ArrowDown')
  expect(await piece.steps()).toEqual(['Step 1: Cast on', 'Step 2: Bind off', 'Step 3: Chart'])
  await keyboard.press('Alt+ArrowUp')
  expect(await piece.steps()).toEqual(['Step 1: Cast on', 'Step 2: Chart', 'Step 3: Bind off'])
  const focused = () =>
    bench.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))
  expect(await focused()).toBe('Move step 2 up')
  await keyboard.press('Escape')
  await piece.dialog.waitFor({ state: 'hidden' })
})
