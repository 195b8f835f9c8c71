import { expect, test } from 'vitest'
import { openBench } from './suite'

// Two windows on one piece: the second says that the first has it, and neither touches the other's.

test('a piece that is open in another window is said to be, and each window keeps its own', async () => {
  const first = await openBench(undefined, {})
  await first.press('p', 'Enter')
  await first.page.getByText(/^Kept in this browser/).waitFor()
  const ofFirst = await first.wordLines()

  const second = await first.page.context().newPage()
  await second.goto(first.page.url())
  await second
    .getByText(/is open in another window. What you change here is kept as a second piece/)
    .first()
    .waitFor()
  const words = second.getByRole('region', { name: 'Words' }).locator('.cm-line')
  expect(await words.allInnerTexts()).toEqual(ofFirst)
  await second.getByRole('application', { name: /^Rows\./ }).focus()
  await second.keyboard.press('ArrowLeft')
  await second.keyboard.press('y')
  await second.keyboard.press('Enter')
  await second.getByText(/^Kept in this browser/).waitFor()
  const ofSecond = await words.allInnerTexts()
  expect(ofSecond).not.toEqual(ofFirst)

  await first.press('ArrowLeft', 'ArrowLeft', 'Enter')
  const more = await first.wordLines()
  await first.page.reload()
  await first.rows.waitFor()
  await expect.poll(() => first.wordLines()).toEqual(more)
  await first.press('Control+z')
  await expect.poll(() => first.wordLines()).toEqual(ofFirst)
  expect(await words.allInnerTexts()).toEqual(ofSecond)

  // Each comes back with its own piece, and with what can be taken back in it.
  await second.reload()
  await expect.poll(() => words.allInnerTexts()).toEqual(ofSecond)
  expect(await second.getByText(/is open in another window/).count()).toBe(0)
  await second.getByRole('application', { name: /^Rows\./ }).focus()
  await second.keyboard.press('Control+z')
  await expect.poll(() => words.allInnerTexts()).toEqual(ofFirst)
  await first.page.reload()
  await expect.poll(() => first.wordLines()).toEqual(ofFirst)
  await first.close()
})
