import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const says = (text: string) => bench.says(text)
const paste = (text: string) => bench.paste(text)
const wholeText = async () => (await bench.wordLines()).join('\n')

/** Tab on until the words have the focus. */
async function tabToWords(): Promise<void> {
  for (let i = 0; i < 80; i++) {
    const there = await bench.text.evaluate((element) => {
      const root = element.getRootNode()
      return root instanceof ShadowRoot && root.activeElement === element
    })
    if (there) return
    await bench.page.keyboard.press('Tab')
  }
  throw new Error('The words are not reached in 80 tabs')
}

const planted: [right: string, wrong: string][] = [
  ['(36 sts)', '(35 sts)'],
  ['p1, k4, p1', 'p1, k3, p2'],
  ['2/2 LC, p1, k1, p1, k1, p1, 2/2 RC', '2/2 RC, p1, k1, p1, k1, p1, 2/2 RC'],
]

test('three planted mistakes are found and mended by keyboard alone, and undo gives all back', async () => {
  const right = await wholeText()
  const wrong = planted.reduce((text, [from, to]) => text.replace(from, to), right)
  const { keyboard } = bench.page
  await tabToWords()
  await paste(wrong)
  await says('differ from the chart in 8 rounds')
  expect(await wholeText()).toBe(wrong)

  await keyboard.press('Control+Home')
  const places: string[] = []
  for (const expected of [
    /says 35 stitches.*come to 36/,
    /Rnds 9, 10, 12.*purl pegs 6/,
    /Rnd 11.*2\/2 RC/,
  ]) {
    await keyboard.press('F8')
    await bench.findings.getByRole('paragraph').filter({ hasText: expected }).waitFor()
    places.push(await bench.place())
    await keyboard.press('Alt+Enter')
    await keyboard.press('Enter')
    await bench.findings
      .getByRole('paragraph')
      .filter({ hasText: expected })
      .waitFor({ state: 'detached' })
  }
  expect(places.map((place) => place.replace(/:.*/, ''))).toEqual([
    'round 1, peg 1',
    'round 9, peg 6',
    'round 11, peg 6',
  ])
  await says('agree with the chart')
  await bench.findings.getByText(/Every (round|row) can be worked/).waitFor()
  expect(await wholeText()).toBe(right)

  for (let step = 0; step < planted.length; step++) await keyboard.press('Control+z')
  await says('differ from the chart in 8 rounds')
  expect(await wholeText()).toBe(wrong)
  await keyboard.press('Control+z')
  await says('Written from the chart')
  expect(await wholeText()).toBe(right)
})

test('a mistake can be found backwards, and its fix left alone', async () => {
  const { keyboard } = bench.page
  await bench.text.click()
  await paste((await wholeText()).replace('(36 sts)', '(35 sts)'))
  await says('agree with the chart')
  await keyboard.press('Shift+F8')
  await keyboard.press('Control+.')
  const fix = bench.button('Write 36 sts', bench.findings)
  expect(await fix.evaluate((element) => element === document.activeElement)).toBe(true)
  await keyboard.press('Escape')
  await keyboard.press('ArrowRight')
  await keyboard.type('!')
  expect(await wholeText()).toContain('!')
})

test('caret and place move each other, and the focus stays where it is', async () => {
  const line = bench.text.locator('.cm-line', { hasText: 'Rnd 11' })
  await line.locator('.token-stitch', { hasText: 'LC' }).click()
  await expect.poll(() => bench.place()).toMatch(/^round 11, peg 3:/)
  await bench.press('ArrowUp', 'ArrowUp')
  await bench.text.locator('.lit').getByText('Rnds 12-14').waitFor()
  expect(await bench.place()).toMatch(/^round 13, peg 3:/)
  const focused = await bench.rows.evaluate((element) => element === document.activeElement)
  expect(focused).toBe(true)
  await tabToWords()
  await bench.page.keyboard.press('ArrowDown')
  await expect.poll(() => bench.place()).toMatch(/^round 15, /)
})

test('own words outlive edits of the chart, a reload and a file, letter by letter', async () => {
  await bench.text.click()
  const own = ['Cuff', '', '  Rnd 1: knit — all pegs, “plain”', 'Rnd 2: purl 🧶'].join('\n')
  await paste(own)
  await says('differ from the chart')
  await bench.press('ArrowUp', 'p', 'Enter')
  expect(await wholeText()).toBe(own)

  await bench.page.getByText(/^Kept in this browser/).waitFor()
  await bench.page.reload()
  await says('My own words')
  await expect.poll(async () => (await bench.wordLines())[3]).toBe('Rnd 2: purl 🧶')

  const file = await bench.download(() => bench.choose('Save'))
  const saved = JSON.parse(Buffer.from(file.bytes).toString('utf8')) as {
    charts: [{ words: string[] }]
  }
  expect(saved.charts[0].words.join('\n')).toBe(own)
  await bench.startEmpty(12, 4)
  await says('Written from the chart')
  const [chooser] = await Promise.all([
    bench.page.waitForEvent('filechooser'),
    bench.choose('Open'),
  ])
  await chooser.setFiles({
    name: file.name,
    mimeType: 'application/json',
    buffer: Buffer.from(file.bytes),
  })
  await says('My own words')
  expect((await bench.wordLines())[3]).toBe('Rnd 2: purl 🧶')
})

test('own words are written from the chart again only after a question, and undo brings them back', async () => {
  await bench.text.click()
  await paste('Rnd 1: knit.')
  await bench.button('Write from the chart', bench.words).click()
  const dialog = bench.page.getByRole('dialog', { name: 'Write from the chart' })
  await bench.button('Keep mine', dialog).click()
  expect(await bench.wordLines()).toEqual(['Rnd 1: knit.'])
  await bench.button('Write from the chart', bench.words).click()
  await bench.button('Write from the chart', dialog).last().click()
  await says('Written from the chart')
  await bench.button('Undo').click()
  expect(await bench.wordLines()).toEqual(['Rnd 1: knit.'])
})

test('a chart is made from words alone', async () => {
  await bench.button('Chart from words').click()
  const dialog = bench.page.getByRole('dialog', { name: 'Chart from words' })
  const words = [
    'Cast on 24 sts.',
    'Rnds 1-3: *k2, p2; rep from * to end. (24 sts)',
    'Rnd 4: *2/2 LC, k2, p2; rep from * to end.',
    'Rep Rnds 1-4 twice more.',
  ].join('\n')
  await dialog.getByRole('textbox', { name: /Paste or write/ }).fill(words)
  await dialog.getByText('12 rounds read, nothing found.').waitFor()
  expect(await dialog.getByLabel('Pegs').inputValue()).toBe('24')
  await dialog.getByRole('img', { name: 'The chart of these words' }).waitFor()
  const title = await bench.page.getByLabel('Title').inputValue()
  await dialog.getByText(`This replaces “${title}”`).waitFor()
  await bench.button('Make the chart', dialog).click()
  await says('My own words agree with the chart')
  expect(await bench.page.getByLabel('Title').inputValue()).toBe(title)
  expect((await bench.wordLines()).join('\n')).toBe(words)
  await bench.press('ArrowUp', 'ArrowUp', 'ArrowUp')
  expect(await bench.place()).toMatch(/^round 4, peg 1: left cross, two over two/)
})

test('a stitch is completed by name, and a line break is never taken for a choice', async () => {
  const { page } = bench
  const { keyboard } = page
  await bench.text.click()
  await paste('Rnd 1: k3, ')
  await keyboard.type('ss')
  await page.getByRole('option', { name: /^ssk/ }).waitFor()
  await keyboard.press('Enter')
  expect(await bench.wordLines()).toEqual(['Rnd 1: k3, ss', ''])
  await keyboard.press('Backspace')
  await keyboard.press('Control+Space')
  await page.getByRole('option', { name: /^ssk/ }).waitFor()
  await keyboard.press('ArrowDown')
  await keyboard.press('Enter')
  expect((await bench.wordLines())[0]).toMatch(/^Rnd 1: k3, ss[kp]$/)
})
