import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { BenchPage } from './bench'
import { openBrowser } from './browser'
import { violations } from './violations'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
})

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

describe.each(sizes)('$width x $height', (size) => {
  test.each(['light', 'dark'] as const)('the bench in %s meets WCAG 2.2 AA', async (scheme) => {
    const bench = await BenchPage.open(browser, inject('url'), size)
    await bench.page.emulateMedia({ colorScheme: scheme })
    expect(await violations(bench)).toEqual([])
    await bench.page.context().close()
  })

  test.each(['light', 'dark'] as const)(
    'own words that differ, and their repairs, meet WCAG 2.2 AA in %s',
    async (scheme) => {
      const bench = await BenchPage.open(browser, inject('url'), size)
      await bench.page.emulateMedia({ colorScheme: scheme })
      if (size.width < 760) await bench.show('Words')
      const text = (await bench.wordLines()).join('\n')
      await bench.text.click()
      await bench.paste(`Cuff\n\n${text.replace('(36 sts)', '(35 sts)')}\nRnd 48: k2, kwool, k2`)
      await bench.text.getByText('kwool').waitFor()
      await bench.page.keyboard.press('Control+Home')
      await bench.page.keyboard.press('F8')
      await bench.button('Write 36 sts', bench.words).waitFor()
      expect(await violations(bench)).toEqual([])
      const wide = await bench.page.evaluate(
        () => document.documentElement.scrollWidth - innerWidth,
      )
      expect(wide).toBe(0)
      await bench.page.context().close()
    },
  )

  test('nothing reaches over the edge of the window', async () => {
    const bench = await BenchPage.open(browser, inject('url'), size)
    const over = await bench.page.evaluate(() => ({
      wide: document.documentElement.scrollWidth - innerWidth,
      high: document.documentElement.scrollHeight - innerHeight,
    }))
    expect(over).toEqual({ wide: 0, high: 0 })
    await bench.page.context().close()
  })

  test('everything that can be pressed is at least 24 x 24 px (WCAG 2.2, 2.5.8)', async () => {
    const bench = await BenchPage.open(browser, inject('url'), size)
    const small = await bench.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('button, select, input, summary, label')]
        .filter((element) => !element.classList.contains('unseen') && element.offsetParent)
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ element, box }) => `${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
    )
    expect(small).toEqual([])
    await bench.page.context().close()
  })
})

test.each(['Start', 'Loom and swatch', 'Booklet', 'Make a cross', 'Chart from words'])(
  'the dialog of %s meets WCAG 2.2 AA, takes the focus and gives it back',
  async (name) => {
    const bench = await BenchPage.open(browser, inject('url'))
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
    await bench.page.context().close()
  },
)

test.each(['light', 'dark'] as const)(
  'own words with findings and what can be written meet WCAG 2.2 AA in %s',
  async (scheme) => {
    const bench = await BenchPage.open(browser, inject('url'))
    await bench.page.emulateMedia({ colorScheme: scheme })
    await bench.text.click()
    await bench.page.keyboard.press('Control+End')
    await bench.page.keyboard.type('\nRnd 48: k2, kwool, k2')
    await bench.text.getByText('kwool').waitFor()
    await bench.page.keyboard.press('Control+Space')
    await bench.page.getByRole('option', { name: /k2tog/ }).waitFor()
    expect(await violations(bench)).toEqual([])
    await bench.page.keyboard.press('Escape')
    await bench.page.context().close()
  },
)

test('the main job can be done by keyboard alone', async () => {
  const bench = await BenchPage.open(browser, inject('url'))
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
  await page.context().close()
})

test('it is readable in black and white and with more contrast asked for', async () => {
  const bench = await BenchPage.open(browser, inject('url'))
  await bench.page.emulateMedia({ forcedColors: 'active' })
  await bench.rows.waitFor()
  const ink = await bench.page.evaluate(() => {
    const path = document.querySelector('svg.chart path.ink-solid')
    return path ? getComputedStyle(path).fill : ''
  })
  const ground = await bench.page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  expect(ink).not.toBe(ground)
  await bench.page.context().close()
})
