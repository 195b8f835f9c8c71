import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { walkFields } from './fieldWalk'
import { eachTestWithBench } from './suite'

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

test('each field beside the chart is used by mouse and keys after a cell was clicked', async () => {
  await clickACell()
  await bench.page.locator('.here summary').click()
  const walked = await walkFields(bench, bench.page.locator('.bench'))
  expect(walked).toEqual(
    expect.arrayContaining([
      'Title',
      'Worked',
      'Pegs from',
      'to',
      'Heads',
      'Ends',
      'Chart on the bench',
      'Search stitches',
      'Words',
    ]),
  )
})
