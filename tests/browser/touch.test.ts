import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

const phone = { width: 390, height: 844 }
let bench: BenchPage
eachTestWithBench(
  async (opened) => {
    bench = opened
    await bench.show('Words')
    await bench.wordLines()
  },
  phone,
  { hasTouch: true, isMobile: true },
)

/** Make the words one's own, with three mistakes in them. */
async function plantMistakes(): Promise<string> {
  const right = (await bench.wordLines()).join('\n')
  await bench.text.tap()
  await bench.paste(
    right
      .replace('(36 sts)', '(35 sts)')
      .replace('p1, k4, p1', 'p1, k3, p2')
      .replace('2/2 LC, p1, k1, p1, k1, p1, 2/2 RC', '2/2 RC, p1, k1, p1, k1, p1, 2/2 RC'),
  )
  await bench.says('differ from the chart in 8 rounds')
  return right
}

test('a tap in the words sets caret and place', async () => {
  const line = bench.text.locator('.cm-line', { hasText: 'Rnd 11' })
  await line.locator('.token-stitch', { hasText: 'LC' }).tap()
  await bench.text.locator('.lit', { hasText: 'Rnd 11' }).waitFor()
  await bench.text.locator('.lit-stitch', { hasText: '2/2 LC' }).waitFor()
  await bench.show('Rows')
  await expect.poll(() => bench.place()).toMatch(/^round 11, peg 3:/)
})

test('three mistakes are mended by taps alone', async () => {
  const right = await plantMistakes()
  for (const [words, fix] of [
    ['35 sts', /^Write 36 sts/],
    ['p2, k1, p1', /^Rewrite Rnds 9.* from the chart/],
    ['2/2 RC, p1, k1, p1, k1, p1, 2/2 RC', /^Rewrite Rnd 11.* from the chart/],
  ] as const) {
    const line = bench.text.locator('.cm-line', { hasText: words }).last()
    await line.locator('.cm-lintRange').first().tap()
    await bench.button(fix, bench.words).tap()
    await expect.poll(() => bench.button(fix, bench.words).count()).toBe(0)
  }
  await bench.says('agree with the chart')
  expect((await bench.wordLines()).join('\n')).toBe(right)
})

test('what is pressed in the words is at least 44 px high and wide', async () => {
  await plantMistakes()
  await bench.text.locator('.cm-lintRange').first().tap()
  await bench.button(/^Write 36 sts/, bench.words).waitFor()
  const small = await bench.page.evaluate(() =>
    [...document.querySelectorAll('header button, .readings button, .words button, summary')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && Math.min(box.width, box.height) < 44)
      .map(({ element, box }) => `${element.outerHTML} ${box.width} x ${box.height}`),
  )
  expect(small).toEqual([])
})

test('the head takes a quarter of a phone at most, and a reading most of it', async () => {
  const shares = await bench.page.evaluate(() => {
    const { top, height } = document.querySelector('main')?.getBoundingClientRect() ?? new DOMRect()
    return { head: top / innerHeight, reading: height / innerHeight }
  })
  expect(shares.head).toBeLessThanOrEqual(0.25)
  expect(shares.reading).toBeGreaterThan(0.7)
})
