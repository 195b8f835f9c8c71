import { setWords } from '../../src/pattern/edits/words'
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { build, preview, type PreviewServer } from 'vite'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { layOutBooklet } from '../../src/booklet/booklet'
import { papers, paperSizes } from '../../src/booklet/page/paper'
import { usualSettings, type BookletSettings } from '../../src/booklet/settings'
import { paint } from '../../src/pattern/edits/paint'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { writeFile } from '../../src/shelf/format'
import { starterCharts } from '../../src/shelf/seeds'
import { writeWords } from '../../src/words/write'
import { workerBrowser } from './browser'
import { readPdf, type ReadPdf } from './readPdf'
import { stitchOf } from '../../src/stitches/vocabulary'

let server: PreviewServer
let page: Page
const complaints: string[] = []

beforeAll(async () => {
  const root = fileURLToPath(new URL('press', import.meta.url))
  const outDir = fileURLToPath(new URL('../../.build/press', import.meta.url))
  const shared = { configFile: false, root, base: './', logLevel: 'error' } as const
  await build({ ...shared, build: { outDir, emptyOutDir: true, assetsInlineLimit: 0 } })
  server = await preview({ ...shared, build: { outDir }, preview: { port: 0 } })
  page = await (await workerBrowser()).newPage()
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(error.message))
  await page.goto(server.resolvedUrls?.local[0] ?? '')
  await page.waitForFunction(() => 'printPattern' in window)
})

afterAll(async () => {
  await page?.close()
  await server?.close()
})

async function print(pattern: Pattern, settings: Partial<BookletSettings> = {}): Promise<ReadPdf> {
  const text = await page.evaluate(([asked, how]) => window.printPattern(asked, how), [
    writeFile(pattern),
    { ...usualSettings, ...settings },
  ] as const)
  return readPdf(Uint8Array.from(text, (letter) => letter.charCodeAt(0)))
}

const cuff = starterCharts[0].pattern()
const oneLine = (text: string) => text.replace(/\s+/gu, ' ')

test.each(paperSizes)('%s: every page has exactly the size of the paper', async (paper) => {
  const { width, height } = papers[paper]
  const { pages } = await print(cuff, { paper })
  expect(pages.length).toBeGreaterThan(0)
  for (const page of pages) {
    expect(page.width).toBeCloseTo((width * 72) / 25.4, 2)
    expect(page.height).toBeCloseTo((height * 72) / 25.4, 2)
  }
})

test('title, author and language are set, and the title is shown', async () => {
  const pattern = { ...cuff, title: 'Stulpe für Жук (2)', designer: 'Ada Quill' }
  const pdf = await print(pattern)
  expect(pdf).toMatchObject({ title: pattern.title, author: 'Ada Quill', showsTitle: true })
  expect(pdf.language).toBe('en-US')
  const british = { ...pattern, style: { ...pattern.style, terms: 'uk' as const } }
  expect((await print(british)).language).toBe('en-GB')
})

test('the fonts are embedded: two as a rule, a third for letters they do not have', async () => {
  const plain = await print(cuff)
  expect(plain.embedded).toBe(true)
  expect(plain.fonts).toEqual(['Atkinson Hyperlegible', 'Atkinson Hyperlegible'])
  const mixed = await print({ ...cuff, title: 'Жук' })
  expect(mixed.embedded).toBe(true)
  expect(mixed.fonts.toSorted()).toEqual([
    'Atkinson Hyperlegible',
    'Atkinson Hyperlegible',
    'DejaVu Sans',
  ])
  expect(mixed.pages[0]?.text).toContain('Жук')
})

test('all words can be found in the text', async () => {
  const { pages } = await print(cuff)
  const text = oneLine(pages.map((page) => page.text).join(' '))
  const { lines } = writeWords(workPattern(cuff), cuff.style.terms)
  expect(lines.length).toBeGreaterThan(5)
  for (const line of lines) expect(text).toContain(oneLine(line.text))
})

test('own words can be found in the text, line by line', async () => {
  const own = ['Cuff', '', 'Rnd 1: knit — all pegs, “plain”', '  loosely', 'Rnds 2-4: as rnd 1']
  const pattern = setWords(newPattern(24, 4), own.join('\n'))
  const { pages } = await print(pattern, { wording: 'own' })
  const lines = pages.flatMap((page) => page.text.split('\n')).map((line) => line.trim())
  const places = own.filter(Boolean).map((line) => lines.indexOf(line.trim()))
  expect(places.every((place) => place >= 0)).toBe(true)
  expect(places).toEqual(places.toSorted((a, b) => a - b))
  expect(oneLine(lines.join(' '))).not.toContain('Rnds 1-4: Knit.')
})

test('a cut cross makes every page a draft', async () => {
  const crossed = paint(newPattern(8, 40), stitchOf('2/2 LC'), 3, 2)
  const marked = async (pattern: Pattern) =>
    (await print(pattern, { paper: 'a5' })).pages.map(({ text }) => text.includes('DRAFT'))
  expect(new Set(await marked(crossed))).toEqual(new Set([false]))
  const draft = await marked(rotateColumns(crossed, 4))
  expect(draft.length).toBeGreaterThan(1)
  expect(new Set(draft)).toEqual(new Set([true]))
})

test('every path of the scenes is drawn, as a path', async () => {
  for (const { pattern } of starterCharts) {
    const { pages } = layOutBooklet(workPattern(pattern()), { ...usualSettings, chart: 'both' })
    const drawn = (await print(pattern(), { chart: 'both' })).pages.map(({ paths }) => paths)
    const asked = pages.map(({ pictures }) =>
      pictures
        // Each picture also has its ground and the frame it is cut to.
        .map(({ scene }) => 2 + scene.layers.flatMap((layer) => layer.items).filter(isPath).length)
        .reduce((sum, count) => sum + count, 0),
    )
    expect(drawn).toEqual(asked)
  }
})

const isPath = ({ kind }: { readonly kind: string }): boolean => kind === 'path'

test('a chart of 96 pegs and 200 rounds in many stitches takes less than 1 MB', async () => {
  const pattern = newPattern(96, 200)
  const stitches = ['k', 'p', 'yo', 'k2tog', 'ssk', 'sl', 'p', 'tuck']
  const rows = chartOn(pattern).rows.map((row, r) => ({
    ...row,
    cells: row.cells.map((_, c) => stitchOf(stitches[(c * 7 + r * 3) % 8] ?? 'k')),
  }))
  const pdf = await print(withChart(pattern, { rows }))
  const sheets = pdf.pages.filter(({ text }) => /^Sheet [A-Z]/mu.test(text))
  expect(sheets.length).toBeGreaterThan(1)
  expect(pdf.bytes).toBeLessThan(1_000_000)
})

test('nothing was complained of, and no policy broken', () => {
  expect(complaints).toEqual([])
})

test('a font that cannot be fetched is told, and printing works again when it can', async () => {
  const other = await (await workerBrowser()).newPage()
  await other.route('**/*.ttf', (route) => route.abort())
  await other.goto(page.url())
  await other.waitForFunction(() => 'printPattern' in window)
  const ask = () =>
    other.evaluate(([file, how]) => window.printPattern(file, how), [
      writeFile(cuff),
      usualSettings,
    ] as const)
  await expect(ask()).rejects.toThrow('The font Atkinson Hyperlegible could not be loaded')
  await other.unroute('**/*.ttf')
  expect((await ask()).startsWith('%PDF')).toBe(true)
  await other.close()
})
