import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { hands } from './hands'
import { PieceOnBench } from './pieceOnBench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
const status = () => bench.page.locator('.bar [role=status]')
const deed = (name: string) =>
  bench.button(new RegExp(`^${name}$`), bench.page.getByRole('toolbar', { name: 'Block' }))
const answer = (name: string | RegExp) => bench.button(name, bench.page.locator('.bar .asked'))
const line = async (round: number) =>
  (await bench.wordLines()).find((text) => new RegExp(`^Rnds? ${round}\\b`).test(text)) ?? ''

/** Place of a cell of the rows on the screen. Round and peg count from 1. */
async function cell(round: number, peg: number): Promise<{ x: number; y: number }> {
  await bench.press('Home', ...Array<string>(8).fill('PageDown'))
  await bench.press(...Array<string>(round - 1).fill('ArrowUp'))
  await bench.press(...Array<string>(peg - 1).fill('ArrowLeft'))
  const box = await bench.rows.locator('path.place').last().boundingBox()
  if (!box) throw new Error('The place is not drawn')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** A ring of 12 pegs with a 2/2 left cross on pegs 5 to 8 of round 3. */
async function withCross(): Promise<void> {
  await bench.startEmpty(12, 6)
  await cell(3, 5)
  await bench.press('3', 'Enter')
  await expect.poll(() => line(3)).toContain('2/2 LC')
}

describe('by keyboard alone', () => {
  eachTestWithBench(
    (opened) => {
      bench = opened
    },
    undefined,
    { permissions: ['clipboard-read', 'clipboard-write'] },
  )

  test('a block is copied as text and pasted where the arrows lead it', async () => {
    await withCross()
    await bench.press('Shift+ArrowLeft', 'Control+c')
    const text = await bench.page.evaluate(() => navigator.clipboard.readText())
    expect(text).toMatch(/^Rnd 1: 2\/2 LC\.\nWorked clockwise/)
    await bench.press('Control+v', 'ArrowUp', 'ArrowUp', 'ArrowLeft')
    await status().filter({ hasText: 'Paste 4 pegs × 1 round: round 5, pegs 6-9' }).waitFor()
    expect(await line(5)).not.toContain('LC')
    await bench.press('Enter')
    await expect.poll(() => line(5)).toBe('Rnd 5: k5, 2/2 LC, k3.')
    await bench.press('Control+z')
    await expect.poll(() => line(5)).not.toContain('LC')
    expect(await line(3)).toContain('2/2 LC')
  })

  test('what would be cut is said before, with answers', async () => {
    await withCross()
    await cell(1, 1)
    await bench.press('Shift+ArrowLeft', 'Shift+ArrowLeft', 'Control+x', 'Control+v')
    await bench.press('ArrowUp', 'ArrowUp', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft')
    await status().filter({ hasText: 'Would cut 2/2 LC, round 3' }).waitFor()
    expect(await line(3)).toContain('2/2 LC')
    expect(await bench.rows.locator('.torn').count()).toBeGreaterThan(0)
    await bench.press('Escape')
    expect(await status().innerText()).not.toContain('Would cut')
    expect(await line(3)).toContain('2/2 LC')
    await bench.press('Control+v', 'Enter')
    await expect.poll(() => line(3)).not.toContain('2/2 LC')
  })

  test('a block goes from one piece into another', async () => {
    await withCross()
    await bench.press('Shift+ArrowLeft', 'Control+c')
    await bench.startEmpty(20, 4)
    await bench.press('Control+v', 'ArrowUp', 'Enter')
    await expect.poll(() => line(2)).toBe('Rnd 2: 2/2 LC, k16.')
  })

  test('and from one chart into another', async () => {
    await withCross()
    await bench.press('Shift+ArrowLeft', 'Control+c')
    const piece = new PieceOnBench(bench)
    await piece.open()
    await bench.button('Add an empty chart', piece.dialog).click()
    await bench.button('On the bench: “Chart 2”', piece.dialog).click()
    await piece.close()
    await bench.press('Control+v', 'Enter')
    await expect.poll(() => line(1)).toContain('Rnd 1: 2/2 LC')
  })

  test('rows are shifted, and a block flipped and moved', async () => {
    await withCross()
    await bench.press('Shift+Space', 'Alt+ArrowLeft')
    await expect.poll(() => line(3)).toBe('Rnd 3: k5, 2/2 LC, k3.')
    await bench.press('Alt+ArrowRight', 'Escape')
    await cell(3, 5)
    await bench.press('Shift+f')
    await expect.poll(() => line(3)).toBe('Rnd 3: k4, 2/2 RC, k4.')
    await bench.press('Shift+m', 'ArrowDown', 'Enter')
    await expect.poll(() => line(2)).toBe('Rnd 2: k4, 2/2 RC, k4.')
    expect(await line(3)).not.toContain('2/2')
  })
})

describe('by mouse', () => {
  eachTestWithBench((opened) => {
    bench = opened
  })

  test('a clipboard that is refused is said, and the copy is kept', async () => {
    await withCross()
    await bench.page.evaluate(() => {
      const refused = () => Promise.reject(new DOMException('no', 'NotAllowedError'))
      Object.assign(navigator.clipboard, { writeText: refused, readText: refused })
    })
    await bench.press('Shift+ArrowLeft')
    await deed('Copy').click()
    await bench.page.getByText('The copy is kept here').waitFor()
    await cell(5, 1)
    await bench.press('Shift+ArrowLeft')
    await deed('Paste').click()
    await answer(/^Paste/).click()
    await expect.poll(() => line(5)).toBe('Rnd 5: 2/2 LC, k8.')
  })

  test('a press on numbers marks rows and pegs, and a stamp puts its block at each press', async () => {
    await withCross()
    const [up, low, at] = [await cell(6, 1), await cell(1, 1), await cell(3, 5)]
    await bench.press('Shift+ArrowLeft', 'Shift+p')
    await bench.page.mouse.click(up.x, up.y)
    await expect.poll(() => line(6)).toBe('Rnd 6: 2/2 LC, k8.')
    await bench.page.mouse.click(low.x, low.y)
    await expect.poll(() => line(1)).toContain('Rnd 1: 2/2 LC, k8.')
    await bench.press('Escape')
    const box = await bench.rows.boundingBox()
    if (!box) throw new Error('The rows are not drawn')
    await bench.page.mouse.click(box.x + box.width - 6, at.y)
    await status().filter({ hasText: '12 pegs × 1 round' }).waitFor()
  })

  test('the block on the chart is dragged', async () => {
    await withCross()
    const [from, to] = [await cell(3, 5), await cell(5, 5)]
    await bench.press('ArrowDown', 'ArrowDown', 'Shift+m')
    await bench.page.mouse.move(from.x, from.y)
    await bench.page.mouse.down()
    await bench.page.mouse.move(to.x, to.y, { steps: 4 })
    await bench.page.mouse.up()
    expect(await status().innerText()).toContain('round 5, pegs 5-8')
    await answer(/^Move/).click()
    await expect.poll(() => line(5)).toBe('Rnd 5: k4, 2/2 LC, k4.')
    expect(await line(3)).not.toContain('LC')
  })
})

describe('by touch', () => {
  eachTestWithBench(
    (opened) => {
      bench = opened
    },
    { width: 390, height: 844 },
    { hasTouch: true, isMobile: true, permissions: ['clipboard-read', 'clipboard-write'] },
  )

  test('a finger that rests marks, its corner is dragged, and the block is copied', async () => {
    await bench.startEmpty(8, 6)
    const { rest, draw } = await hands(bench)
    const [first, second, third, far] = [
      await cell(2, 3),
      await cell(3, 5),
      await cell(4, 6),
      await cell(5, 1),
    ]
    await bench.press('y', 'Enter')
    await cell(2, 3)
    await bench.press('y', 'Enter')
    const marked = bench.rows.locator('.marked')
    await rest(first, () => marked.waitFor(), second)
    await status().filter({ hasText: '3 pegs × 2 rounds' }).waitFor()
    const handle = await bench.rows.locator('.handle').first().boundingBox()
    if (!handle) throw new Error('The corner is not drawn')
    const corner = { x: handle.x + handle.width / 2, y: handle.y + handle.height / 2 }
    const inside = { x: corner.x + 6, y: corner.y + 6 }
    await draw([inside], [third])
    await status().filter({ hasText: '4 pegs × 3 rounds' }).waitFor()
    await deed('Copy').tap()
    await bench.page.getByText('Copied: 4 pegs × 3 rounds').waitFor()
    await deed('Paste').tap()
    await answer(/^Paste/).waitFor()
    await draw([first], [{ x: far.x, y: far.y }])
    // The browser takes a tap straight after a drag for the end of it.
    await expect
      .poll(async () => {
        if ((await answer(/^Paste/).count()) > 0) await answer(/^Paste/).tap()
        return answer(/^Paste/).count()
      })
      .toBe(0)
    await bench.show('Words')
    await expect.poll(async () => (await bench.wordLines()).join('\n')).toContain('Rnd 4: yo, k7.')
  })
})
