import { expect, test } from 'vitest'
import { secondByItself } from '../../src/pattern/pair'
import type { Pattern } from '../../src/pattern/pattern'
import { workPiece } from '../../src/pattern/workPiece'
import { writeFile } from '../../src/shelf/format'
import { writePiece } from '../../src/words/piece/write'
import { ferryMitt, withPiece } from '../words/piece/pieces'
import type { BenchPage } from './bench'
import { readPdf, type ReadPdf } from './readPdf'
import { eachTestWithBench } from './suite'

const mitt = withPiece(ferryMitt(), {
  pictures: [{ chart: 'Plait', row: 0, from: 2, to: 9 }],
  pace: 25,
  swatch: { stitches: 40, rows: 42, grams: 12.5 },
})

let bench: BenchPage
eachTestWithBench(async (opened) => {
  bench = opened
  const [chooser] = await Promise.all([
    bench.page.waitForEvent('filechooser'),
    bench.button('Open').first().click(),
  ])
  await chooser.setFiles({
    name: 'mitt.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeFile(mitt)),
  })
  await bench.page.getByText('Ferry mitt').first().waitFor()
})

async function printed(...unticked: string[]): Promise<ReadPdf> {
  await bench.choose('Booklet')
  const dialog = bench.page.getByRole('dialog', { name: 'Booklet' })
  for (const name of unticked) await dialog.getByRole('checkbox', { name }).uncheck()
  const { name, bytes } = await bench.download(() => bench.button('Save as PDF', dialog).click())
  expect(name).toBe('ferry-mitt.pdf')
  return readPdf(bytes)
}

const oneLine = (text: string): string => text.replace(/\s+/gu, ' ')
const textOf = ({ pages }: ReadPdf): string => oneLine(pages.map(({ text }) => text).join(' '))
const linesOf = (pattern: Pattern): string[] =>
  writePiece(workPiece(pattern)).blocks.flatMap(({ lines }) =>
    lines.map(({ text }) => oneLine(text)),
  )

test('a mitt is printed whole: words of both of the pair, step pictures, what it takes', async () => {
  const pdf = await printed()
  const text = textOf(pdf)
  const [first = '', second = ''] = text.split('Second of the pair')
  for (const line of linesOf(mitt)) expect(first).toContain(line)
  for (const line of linesOf(secondByItself(mitt))) expect(second).toContain(line)
  expect(first).toContain('How it is worked: 2/2 left cross on pegs 3 to 6')
  expect(first).toMatch(/1 Take the loops of pegs 5 and 6 onto the spare needle/)
  expect(first).toMatch(/About \d+ m of yarn, \d+ g, for one: double it for a pair\./)
  expect(pdf.embedded).toBe(true)
  // The first page has the piece from the side, which is drawn and not a picture of dots.
  expect(pdf.pages[0]?.paths).toBeGreaterThan(20)
})

test('what is not wanted is left out of the file', async () => {
  const text = textOf(await printed('Step pictures', 'Second of the pair'))
  expect(text).toContain('2/2 LC')
  expect(text).not.toContain('2/2 RC')
  expect(text).not.toContain('How it is worked: 2/2')
})
