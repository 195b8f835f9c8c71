import { openBrowser } from '../browser/browser'
import { serve } from '../browser/serve'
import { writeFile } from '../../src/shelf/format'
import { fabricRows, fabricSize, measureFabric } from './browserFabric'
import { against, show, table } from './measure'
import { texturedPiece } from './pieces'

const presses = 40

/** In a real browser: from pointer-down to the next painted frame, first draw, and the PDF. */
export async function benchBrowser(): Promise<void> {
  const { url, stop } = await serve()
  const browser = await openBrowser()
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    // tsx names the functions it compiles through this helper, which the page does not have.
    await page.addInitScript('globalThis.__name = (named) => named')
    await page.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'))
    await page.goto(url)
    await page.getByRole('button', { name: 'Open', exact: true }).waitFor()
    const open = async (pegs: number, rows: number): Promise<number> => {
      const buffer = Buffer.from(writeFile(texturedPiece(pegs, rows)))
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Open', exact: true }).click(),
      ])
      await page.evaluate(() => {
        const marks = globalThis as unknown as { drawn: Promise<number> }
        const start = performance.now()
        const count = () => document.querySelectorAll('svg.chart g').length
        const before = count()
        marks.drawn = new Promise((done) => {
          const look = () => {
            if (count() === before) requestAnimationFrame(look)
            else requestAnimationFrame(() => done(performance.now() - start))
          }
          look()
        })
      })
      await chooser.setFiles({ name: 'piece.json', mimeType: 'application/json', buffer })
      return page.evaluate(() => (globalThis as unknown as { drawn: Promise<number> }).drawn)
    }
    const firstDraw = await open(200, 500)

    const frames = await page.evaluate(async (count) => {
      const svg = document.querySelector('svg.chart') as SVGSVGElement
      const view = svg.parentElement as HTMLElement
      const box = view.getBoundingClientRect()
      const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)))
      const median = (list: number[]) => list.sort((a, b) => a - b)[list.length >> 1] as number
      const press = async (i: number) => {
        const at = {
          clientX: box.left + box.width * (0.3 + 0.4 * ((i * 7) % 10) * 0.1),
          clientY: box.top + box.height * (0.3 + 0.4 * ((i * 3) % 10) * 0.1),
          pointerId: 1,
          button: 0,
          bubbles: true,
        }
        const start = performance.now()
        svg.dispatchEvent(new PointerEvent('pointerdown', at))
        await frame()
        const took = performance.now() - start
        svg.dispatchEvent(new PointerEvent('pointerup', at))
        await frame()
        return took
      }
      // The signs of one row in the middle of the chart.
      const path = svg.querySelectorAll('path.ink-solid')[250] as SVGPathElement
      const floor = async (i: number) => {
        const start = performance.now()
        path.setAttribute('stroke-width', String(0.1 + (i % 2) * 0.01))
        await frame()
        return performance.now() - start
      }
      const edits: number[] = []
      const floors: number[] = []
      svg.setPointerCapture = () => undefined
      for (let i = 0; i < count; i++) {
        floors.push(await floor(i))
        edits.push(await press(i))
      }
      return { edit: median(edits), floor: median(floors) }
    }, presses)

    await open(96, 200)
    const start = performance.now()
    await page.getByRole('button', { name: 'Booklet', exact: true }).click()
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as PDF' }).click(),
    ])
    const stream = await download.createReadStream()
    let bytes = 0
    for await (const chunk of stream) bytes += (chunk as Buffer).length
    const pdf = (performance.now() - start) / 1000

    await page.keyboard.press('Escape')
    await open(fabricSize.pegs, fabricSize.rows)
    const fabric = await measureFabric(browser, page)

    console.log('\nIn the browser')
    const ratio = frames.edit / frames.floor
    table(
      ['what', 'figure', 'limit'],
      [
        ['press to next frame, 200 x 500, ms', show(frames.edit, 1), ''],
        ['one attribute changed to next frame, ms', show(frames.floor, 1), ''],
        ['ratio of the two', show(ratio, 2), against(ratio, 1.5)],
        ['first draw of 200 x 500, s', show(firstDraw / 1000, 2), against(firstDraw / 1000, 1.5)],
        ['PDF of 96 x 200, s', show(pdf, 2), against(pdf, 3)],
        ['PDF of 96 x 200, MB', show(bytes / 1e6, 2), against(bytes / 1e6, 1)],
        ...fabricRows(fabric),
      ],
    )
  } finally {
    await browser.close()
    await stop()
  }
}
