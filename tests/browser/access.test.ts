import { describe, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { openBench } from './suite'
import { violations } from './violations'

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

describe.each(sizes)('$width x $height', (size) => {
  test('the bench meets WCAG 2.2 AA', async () => {
    const bench = await openBench(size)
    expect(await violations(bench)).toEqual([])
    await bench.close()
  })

  test('own words that differ, and their repairs, meet WCAG 2.2 AA', async () => {
    const bench = await openBench(size)
    await bench.show('Words')
    const text = (await bench.wordLines()).join('\n')
    await bench.text.click()
    await bench.paste(`Cuff\n\n${text.replace('(36 sts)', '(35 sts)')}\nRnd 48: k2, kwool, k2`)
    await bench.text.getByText('kwool').waitFor()
    await bench.page.keyboard.press('Control+Home')
    await bench.page.keyboard.press('F8')
    await bench.button('Write 36 sts').waitFor()
    // What is told at the caret of a phone may be higher than its room, and have no button.
    const told = bench.words.getByRole('group', { name: 'Found here' })
    if (size.width < 760) expect(await told.evaluate(({ tabIndex }) => tabIndex)).toBe(0)
    expect(await violations(bench)).toEqual([])
    const wide = await bench.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(wide).toBe(0)
    await bench.close()
  })

  test('nothing reaches over the edge of the window', async () => {
    const bench = await openBench(size)
    const over = await bench.page.evaluate(() => ({
      wide: document.documentElement.scrollWidth - innerWidth,
      high: document.documentElement.scrollHeight - innerHeight,
    }))
    expect(over).toEqual({ wide: 0, high: 0 })
    await bench.close()
  })

  test('everything that can be pressed is at least 24 x 24 px (WCAG 2.2, 2.5.8)', async () => {
    const bench = await openBench(size)
    const small = await bench.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('button, select, input, summary, label')]
        .filter((element) => !element.classList.contains('unseen') && element.offsetParent)
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ element, box }) => `${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
    )
    expect(small).toEqual([])
    await bench.close()
  })
})

test.each(['Start', 'Loom and swatch', 'Booklet', 'Make a cross', 'Chart from words'])(
  'the dialog of %s meets WCAG 2.2 AA, takes the focus and gives it back',
  async (name) => {
    const bench = await openBench()
    const opener = bench.page.getByRole('button', { name, exact: true }).first()
    await opener.focus()
    await bench.page.keyboard.press('Enter')
    const open = bench.page.locator('dialog[open], [popover]:popover-open')
    await open.waitFor()
    // Its previews scroll, and stand there a little later than the dialog.
    if (name === 'Booklet') await open.getByRole('img', { name: /^Page 1 of/ }).waitFor()
    expect(await violations(bench)).toEqual([])
    await bench.page.keyboard.press('Escape')
    await open.waitFor({ state: 'hidden' })
    expect(await opener.evaluate((element) => element === document.activeElement)).toBe(true)
    await bench.close()
  },
)

/** Words with a slip in every row: more is told of them than the dialog has room for. */
const manySlips = ['Worked on 12 pegs.', ...[...Array(30).keys()].map((n) => `Rnd ${n + 1}: prul.`)]

/** The dialogs that the head does not open, and those that tell much: how each is opened. */
const laidOut: readonly (readonly [string, (bench: BenchPage) => Promise<void>])[] = [
  [
    'Chart from words',
    async (bench) => {
      await bench.button('Chart from words').click()
      await dialogOf(bench).getByLabel('Paste or write').fill(manySlips.join('\n'))
      await dialogOf(bench).getByRole('status').filter({ hasText: '30 rounds read' }).waitFor()
    },
  ],
  [
    'Chart from words that nothing mends',
    async (bench) => {
      await bench.button('Chart from words').click()
      const rows = [...Array(30).keys()].map((n) => `Rnd ${n + 1}: xyzzyq${n}.`)
      await dialogOf(bench).getByLabel('Paste or write').fill(rows.join('\n'))
      await dialogOf(bench).getByRole('status').filter({ hasText: 'things found' }).waitFor()
    },
  ],
  [
    'Write from the chart',
    async (bench) => {
      await bench.button('Make them mine').click()
      await bench.button('Write from the chart').click()
    },
  ],
  [
    'Reverse the working direction',
    async (bench) => {
      await bench.choose('Loom and swatch')
      await bench.button(/^Reverse the working direction/, dialogOf(bench)).click()
      await dialogOf(bench).getByText('What changes').waitFor()
    },
  ],
  [
    'Make it a piece of its own',
    async (bench) => {
      await bench.choose('Loom and swatch')
      await dialogOf(bench).getByLabel('Made').selectOption('mirrored')
      await bench.page.keyboard.press('Escape')
      await bench.button(/^Second/).click()
      await bench.button('Make it a piece of its own').click()
    },
  ],
  [
    'Not opened',
    async (bench) => {
      const file = { name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{') }
      await bench.page.locator('input[type=file]').setInputFiles(file)
    },
  ],
  [
    'Step pictures',
    async (bench) => {
      await bench.button('Pegs', bench.page.getByRole('group', { name: 'Right pane' })).click()
      const pegs = bench.page.locator('.pegs')
      await bench.press('Home')
      await bench.button('From here', pegs).click()
      await bench.press('End')
      await bench.button('Step pictures', pegs).click()
      await dialogOf(bench).getByRole('img').last().waitFor()
    },
  ],
]
const dialogOf = ({ page }: BenchPage) => page.locator('dialog[open]').last()

/** What can scroll and cannot be scrolled by keys: it and all in it take no focus. */
const unreachable = (bench: BenchPage): Promise<string[]> =>
  bench.page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('dialog[open], dialog[open] *')]
      .filter((part) => /auto|scroll/.test(getComputedStyle(part).overflowY))
      .filter(({ scrollHeight, clientHeight }) => scrollHeight > clientHeight + 1)
      .filter((part) => {
        const own = [part, ...part.querySelectorAll<HTMLElement>('*')]
        return !own.some((one) => one.tabIndex >= 0 && !one.matches(':disabled'))
      })
      .map(({ className }) => className),
  )

test.each(laidOut)(
  'the dialog of %s, with all it tells, meets WCAG 2.2 AA and scrolls by keys',
  async (_name, open) => {
    const bench = await openBench({ width: 1440, height: 900 })
    await open(bench)
    await dialogOf(bench).waitFor()
    for (const size of [
      { width: 1440, height: 900 },
      { width: 390, height: 844 },
      { width: 844, height: 390 },
    ]) {
      await bench.page.setViewportSize(size)
      expect(await violations(bench)).toEqual([])
      expect(await unreachable(bench)).toEqual([])
    }
    await bench.close()
  },
)

test('own words with findings and what can be written meet WCAG 2.2 AA', async () => {
  const bench = await openBench()
  await bench.text.click()
  await bench.page.keyboard.press('Control+End')
  await bench.page.keyboard.type('\nRnd 48: k2, kwool, k2')
  await bench.text.getByText('kwool').waitFor()
  await bench.page.keyboard.press('Control+Space')
  await bench.page.getByRole('option', { name: /k2tog/ }).waitFor()
  expect(await violations(bench)).toEqual([])
  await bench.page.keyboard.press('Escape')
  await bench.close()
})

test('the main job can be done by keyboard alone', async () => {
  const bench = await openBench()
  const { page } = bench
  const tabTo = async (name: RegExp, role: string) => {
    for (let i = 0; i < 80; i++) {
      const here = await page.evaluate(() => {
        const element = document.activeElement
        return `${element?.getAttribute('role') ?? element?.tagName ?? ''} ${element?.getAttribute('aria-label') ?? element?.textContent ?? ''}`
      })
      if (name.test(here) && here.toLowerCase().startsWith(role)) return
      await page.keyboard.press('Tab')
    }
    throw new Error(`No ${role} ${String(name)} in 80 tabs`)
  }
  await tabTo(/Rows\./, 'application')
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('y')
  await page.keyboard.press('Enter')
  await bench.findings
    .getByText(/Round 1/)
    .first()
    .waitFor()
  await tabTo(/Undo|Row 1/, 'button')
  await page.keyboard.press('Control+z')
  await bench.findings.getByText(/Every (round|row) can be worked/).waitFor()
  await bench.close()
})

test('it is readable in black and white and with more contrast asked for', async () => {
  const bench = await openBench()
  await bench.page.emulateMedia({ forcedColors: 'active' })
  await bench.rows.waitFor()
  const ink = await bench.page.evaluate(() => {
    const path = document.querySelector('svg.chart path.ink-solid')
    return path ? getComputedStyle(path).fill : ''
  })
  const ground = await bench.page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  expect(ink).not.toBe(ground)
  await bench.close()
})
