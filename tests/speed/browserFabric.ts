import type { Browser, Page } from 'playwright-core'
import { against, show } from './measure'

export const fabricSize = { pegs: 96, rows: 120 } as const

/** Milliseconds between two frames at 60 a second, and what the clock of a browser may be off. */
const frameLimit = 17.2
const firstLimit = 500
const frames = 120

interface Panning {
  /** Of the time from frame to frame, ms. */
  readonly median: number
  /** The slowest frame but for one in twenty. */
  readonly slow: number
}

interface FabricFigures {
  /** From the press until what is in view is drawn, ms. */
  readonly first: number
  /** Until the rows out of view are drawn too, a few whenever the browser has nothing else to do. */
  readonly all: number
  readonly yarn: Panning
  readonly texture: Panning
  /** The same scrolling of a pane with nothing in it. */
  readonly empty: Panning
}

/** The fabric of the piece on the bench: its first drawing, and panning it frame by frame. */
export async function measureFabric(browser: Browser, page: Page): Promise<FabricFigures> {
  const [first, all] = await page.evaluate(async (rows) => {
    const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)))
    const button = [...document.querySelectorAll<HTMLButtonElement>('.rows header button')].find(
      ({ textContent }) => textContent === 'Fabric',
    )
    await frame()
    const start = performance.now()
    button?.click()
    while (!document.querySelector('svg.fabric path')) await frame()
    await frame()
    const seen = performance.now() - start
    while (document.querySelectorAll('svg.fabric > g').length < rows) await frame()
    await frame()
    return [seen, performance.now() - start] as const
  }, fabricSize.rows)
  const zoom = page.getByRole('group', { name: 'Zoom of Fabric' })
  const texture = await pan(page, 'svg.fabric')
  await zoom.getByTitle('Back to 100 %').click()
  await zoom.getByRole('button', { name: 'Larger' }).click()
  await zoom.getByRole('button', { name: 'Larger' }).click()
  const yarn = await pan(page, 'svg.fabric')
  const blank = await browser.newPage()
  await blank.addInitScript('globalThis.__name = (named) => named')
  await blank.goto('about:blank')
  await blank.setContent(
    `<div style="width:430px;height:580px;overflow:auto"><div class="empty" style="width:2400px;height:2200px">.</div></div>`,
  )
  const empty = await pan(blank, '.empty')
  await blank.close()
  return { first, all, yarn, texture, empty }
}

/** Scroll the view of an element to and fro, a step in every frame. */
export async function pan(page: Page, selector: string): Promise<Panning> {
  // The rest of the drawing is added while nothing else is to be done.
  await page.waitForTimeout(2000)
  return page.evaluate(
    async ({ content, count }) => {
      const view = document.querySelector(content)?.parentElement
      if (!view) throw new Error(`Nothing is called ${content}`)
      const times: number[] = []
      let last = await new Promise<number>((done) => requestAnimationFrame(done))
      let way = 1
      for (let i = 0; i < count; i++) {
        const before = view.scrollTop
        view.scrollBy(way * 6, way * 18)
        if (view.scrollTop === before) way = -way
        const now = await new Promise<number>((done) => requestAnimationFrame(done))
        times.push(now - last)
        last = now
      }
      const sorted = times.sort((a, b) => a - b)
      const at = (part: number) => sorted[Math.floor(part * (sorted.length - 1))] ?? NaN
      return { median: at(0.5), slow: at(0.95) }
    },
    { content: selector, count: frames },
  )
}

/** For the table: figure and limit. */
export function fabricRows({ first, all, yarn, texture, empty }: FabricFigures): string[][] {
  const { pegs, rows } = fabricSize
  const of = `fabric of ${pegs} x ${rows}`
  return [
    [`first draw of the ${of}, ms`, show(first, 0), against(first, firstLimit)],
    [`its rows out of view too, when idle, ms`, show(all, 0), against(all, firstLimit)],
    ...Object.entries({ yarn, texture }).flatMap(([name, { median, slow }]) => [
      [
        `frame while panning the ${of} as ${name}, ms`,
        show(median, 1),
        against(median, frameLimit),
      ],
      [`19 of 20 frames take at most, ms`, show(slow, 1), ''],
      [
        'ratio to panning an empty pane',
        show(median / empty.median, 2),
        against(median / empty.median, 1.1),
      ],
    ]),
  ]
}
