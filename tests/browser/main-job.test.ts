import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { readPdf } from './readPdf'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

/** A ring of 24 pegs, 8 rounds, columns 1 to 8 repeated, a 2/2 left cross over their edge. */
async function paintWrongCross(): Promise<void> {
  await bench.startEmpty(24, 8)
  await bench.press('Home', ...new Array<string>(16).fill('ArrowLeft'))
  expect(await bench.place()).toBe('round 1, peg 17: knit')
  await bench.press(...new Array<string>(7).fill('Shift+ArrowLeft'))
  await bench.press('r')
  await bench.page
    .getByRole('searchbox', { name: 'Search stitches' })
    .fill('left cross, two over two')
  await bench.button(/^2\/2 LC\s*, left cross, two over two/).click()
  await bench.press('Home', ...new Array<string>(14).fill('ArrowLeft'), 'ArrowUp', 'ArrowUp')
  await bench.press('Enter')
}

test('the main job: paint a wrong cross, mend it, undo, redo, reload, print', async () => {
  await paintWrongCross()
  const finding = await bench.finding('repeat')
  const wrong = await bench.findings.innerText()
  const before = await bench.wordLines()

  await bench.mend('Move it 2 pegs earlier')
  await finding.waitFor({ state: 'detached' })
  const mended = await bench.wordLines()
  expect(mended).not.toEqual(before)

  await bench.press('Control+z')
  expect(await bench.findings.innerText()).toBe(wrong)
  expect(await bench.wordLines()).toEqual(before)
  await bench.press('Control+Shift+z')
  expect(await bench.wordLines()).toEqual(mended)

  await bench.page.getByText(/^Kept in this browser at/).waitFor()
  await bench.page.reload()
  await bench.rows.waitFor()
  await bench.page.getByText('Back where you left it').waitFor()
  expect(await bench.wordLines()).toEqual(mended)
})

test('the printed page says and shows what the chart does, read back by an independent reader', async () => {
  await bench.startEmpty(12, 6)
  await bench.press('p', 'Home', 'Enter')
  for (let peg = 2; peg <= 5; peg++) await bench.press('ArrowLeft', 'Enter')
  await bench.press('Home', 'ArrowUp', 'ArrowUp', 'y', 'Enter', 'ArrowLeft', '/', 'Enter')
  await bench.press('ArrowUp', 'ArrowUp', '3', 'Enter')
  expect(await bench.wordLines()).toEqual([
    'Rnd 1: p5, k7. (12 sts)',
    'Rnd 2: Knit.',
    'Rnd 3: yo, k2tog, k10.',
    'Rnd 4: Knit.',
    'Rnd 5: k1, 2/2 LC, k7.',
    'Rnd 6: Knit.',
  ])

  await bench.choose('Booklet')
  const dialog = bench.page.getByRole('dialog', { name: 'Booklet' })
  const svg = await bench.download(() => bench.button('Rows as SVG', dialog).click())
  expect(svg.name).toBe('untitled-rows.svg')
  const drawn = await bench.page.evaluate((text) => {
    const file = new DOMParser().parseFromString(text, 'image/svg+xml')
    const dots = [...file.querySelectorAll('.ink-solid')]
      .map((path) => path.getAttribute('d')?.match(/M[^M]*a[^M]*a[^M]*Z/g)?.length ?? 0)
      .reduce((sum, count) => sum + count, 0)
    return { broken: file.querySelector('parsererror') !== null, dots }
  }, new TextDecoder().decode(svg.bytes))
  expect(drawn).toEqual({ broken: false, dots: 5 })

  const file = await bench.download(() => bench.button('Save as PDF', dialog).click())
  expect(file.name).toBe('untitled.pdf')
  const pdf = await readPdf(file.bytes)
  // ISO 216: A4 is 210 x 297 mm; a point is 1/72 inch.
  for (const page of pdf.pages) {
    expect(page.width).toBeCloseTo((210 / 25.4) * 72, 1)
    expect(page.height).toBeCloseTo((297 / 25.4) * 72, 1)
  }
  expect(pdf).toMatchObject({ title: 'Untitled', showsTitle: true, embedded: true })
  expect(pdf.language).toBe('en-US')
  expect(pdf.fonts.join()).toMatch(/Atkinson/)
  const text = pdf.pages.map((page) => page.text).join('\n')
  for (const line of ['yo, k2tog, k10.', 'k1, 2/2 LC, k7.', 'p5, k7. (12 sts)'])
    expect(text).toContain(line)

  // 12 x 6 cells: 11 lines between columns and 5 between rows, on the chart's page.
  expect(pdf.pages.some(({ lines }) => lines >= 16)).toBe(true)
  // Five purl dots in the chart, and the one of the key.
  expect(pdf.pages.reduce((sum, { dots }) => sum + dots, 0)).toBe(6)

  const key = /Key([\s\S]*?)(Source|Abbreviations)/.exec(text)?.[1] ?? ''
  const used = ['knit', 'purl', 'yarn over', 'knit two together', 'left cross, two over two']
  for (const name of used) expect(key).toContain(name)
  const entries = key.split('\n').filter((line) => /^\S/.test(line.trim()) && line.trim() !== '')
  expect(entries.join(' ')).not.toMatch(/slip|tuck|bobble|ssk/)
})

test('a drag is one step to take back', async () => {
  await bench.startEmpty(24, 8)
  const before = await bench.wordLines()
  const box = await bench.rows.boundingBox()
  if (!box) throw new Error('The chart is not shown')
  await bench.page.mouse.move(box.x + box.width * 0.3, box.y + box.height * 0.5)
  await bench.page.mouse.down()
  await bench.page.mouse.move(box.x + box.width * 0.7, box.y + box.height * 0.5, { steps: 6 })
  await bench.page.mouse.up()
  const purled = (await bench.wordLines()).find((line) => /p\d/.test(line))
  expect(Number(/p(\d+)/.exec(purled ?? '')?.[1])).toBeGreaterThan(6)
  await bench.button('Undo').click()
  expect(await bench.wordLines()).toEqual(before)
})

test('a file that cannot be read is refused with what and where, and the work stays', async () => {
  const before = await bench.wordLines()
  const offer = async (text: string) => {
    const [chooser] = await Promise.all([
      bench.page.waitForEvent('filechooser'),
      bench.choose('Open'),
    ])
    await chooser.setFiles({
      name: 'other.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    })
    const dialog = bench.page.getByRole('dialog', { name: 'Not opened' })
    const said = await dialog.getByRole('paragraph').innerText()
    await bench.button('OK', dialog).click()
    return said
  }
  expect(await offer('{"pegwright": 99}')).toMatch(/newer Pegwright .* version 99/)
  expect(await offer('{"pegwright": 1, "title": ')).toMatch(/line 1, column/)
  expect(await offer('not a chart')).toMatch(/not a Pegwright file/)
  expect(await bench.wordLines()).toEqual(before)
})

test('what is saved is opened again as it was', async () => {
  await bench.choose('Start')
  await bench.button(/^Spindrift topper/).click()
  const before = await bench.wordLines()
  const file = await bench.download(() => bench.choose('Save'))
  await bench.startEmpty(12, 4)
  const [chooser] = await Promise.all([
    bench.page.waitForEvent('filechooser'),
    bench.choose('Open'),
  ])
  await chooser.setFiles({
    name: file.name,
    mimeType: 'application/json',
    buffer: Buffer.from(file.bytes),
  })
  await bench.words.getByText(before[0] ?? '').waitFor()
  expect(await bench.wordLines()).toEqual(before)
})

test.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])('the pages of the print preview stand apart at $width x $height', async (size) => {
  await bench.page.setViewportSize(size)
  await bench.choose('Start')
  await bench.button(/^Hundred-steps heel/).click()
  await bench.choose('Booklet')
  const pages = bench.page.getByRole('img', { name: /^Page \d+ of/ })
  await pages.nth(2).waitFor()
  const boxes = await pages.evaluateAll((all) =>
    all.map((page) => {
      const { left, right, top, bottom } = page.getBoundingClientRect()
      return { left, right, top, bottom }
    }),
  )
  const overlaps = boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
  )
  expect(overlaps).toEqual([])
  // A4 is 210 x 297 mm (ISO 216), on the screen as well.
  for (const { left, right, top, bottom } of boxes)
    expect((bottom - top) / (right - left)).toBeCloseTo(297 / 210, 2)
})

test('after a press on a button with the pointer the keys work on the chart again', async () => {
  await bench.startEmpty(12, 4)
  await bench.press('p', 'Enter')
  await bench.button('Undo').click()
  await bench.page.keyboard.press('y')
  await bench.page.keyboard.press('Enter')
  await bench.words.getByText(/yo, k11/).waitFor()
  expect((await bench.wordLines())[0]).toMatch(/^Rnd 1: yo/)
})

test('a piece that was opened and not changed is not kept a second time', async () => {
  for (let time = 0; time < 3; time++) {
    await bench.choose('Start')
    await bench.button(/^Spindrift topper/).click()
    await bench.page.getByText(/^Kept in this browser at/).waitFor()
  }
  await bench.choose('Start')
  const dialog = bench.page.getByRole('dialog', { name: 'Start' })
  await bench
    .button(/^Spindrift topper/, dialog)
    .first()
    .waitFor()
  await bench.page.waitForTimeout(300)
  expect(await dialog.getByRole('button', { name: 'Remove' }).count()).toBe(0)
})
