import { describe, expect, test } from 'vitest'
import { PieceOnBench } from './pieceOnBench'
import { openBench } from './suite'
import { violations } from './violations'

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

/** A bench with its whole piece in sight, on a screen of this size. */
async function withPiece(size: { width: number; height: number }) {
  const bench = await openBench(size)
  await bench.page.emulateMedia({ reducedMotion: 'reduce' })
  await bench.startEmpty(24, 4)
  const piece = new PieceOnBench(bench)
  return { bench, piece }
}

describe.each(sizes)('$width x $height', (size) => {
  test('the line of steps and the dialog of the whole piece meet WCAG 2.2 AA', async () => {
    const { bench, piece } = await withPiece(size)
    expect(await violations(bench)).toEqual([])

    await piece.open()
    expect(await violations(bench)).toEqual([])

    // With every kind of step, a finding at a step, a refused name and a refused heel.
    for (const kind of ['Note', 'Pegs you work', 'Plain rows', 'Chart', 'Cast on'])
      await piece.add(kind, 1)
    await piece.field(2, 'which pegs').selectOption('pegs')
    await piece.dialog.getByText('that already have loops').waitFor()
    await piece.rename('Chart', '')
    await piece.dialog.getByText('A chart needs a name.').waitFor()
    const heel = piece.dialog.getByRole('region', { name: 'Heel, toe or wedge' })
    await heel.getByLabel('Turned each side').fill('9')
    await heel.getByLabel('Turned each side').press('Tab')
    await heel.getByText('at least one peg in the middle must stay without a turn').waitFor()
    expect(await violations(bench)).toEqual([])

    const over = await piece.dialog.evaluate((dialog) => ({
      page: document.documentElement.scrollWidth - innerWidth,
      body: [...dialog.querySelectorAll('.body')].map(
        (body) => body.scrollWidth - body.clientWidth,
      ),
    }))
    expect(over).toEqual({ page: 0, body: [0] })
    const small = await piece.dialog.evaluate((dialog) =>
      [...dialog.querySelectorAll('button, select, input, textarea')]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 24 || box.height < 24)
        .filter(({ element }) => !element.matches('[type=checkbox]'))
        .map(({ element, box }) => `${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
    )
    expect(small).toEqual([])
    await bench.close()
  })
})

test('the dialog takes the focus and gives it back', async () => {
  const { bench, piece } = await withPiece({ width: 1440, height: 900 })
  const opener = bench.menu('Steps')
  await opener.focus()
  await bench.page.keyboard.press('Enter')
  await piece.dialog.waitFor()
  await bench.page.keyboard.press('Escape')
  await piece.dialog.waitFor({ state: 'hidden' })
  expect(await opener.evaluate((element) => element === document.activeElement)).toBe(true)
  await bench.close()
})
