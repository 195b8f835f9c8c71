import { expect, test } from 'vitest'
import {
  figurePicture,
  figureSheet,
  pictureWidth,
  sheetSizes,
} from '../../../src/drawing/pegs/figures/sheet'
import { writeSvg } from '../../../src/drawing/svg'
import { paint } from '../../../src/pattern/edits/paint'
import { newPattern } from '../../../src/pattern/pattern'
import { lastWalk } from './walks'
import { stitchOf } from '../../../src/stitches/vocabulary'

/** Ten letters to a line. */
const breakLines = (text: string): string[] => text.match(/.{1,10}/g) ?? ['']

const pattern = paint(newPattern(24, 1), stitchOf('2/2 LC'), 0, 4)
const moments = lastWalk(pattern)
const figure = (first: number, last: number, number: number) =>
  figurePicture(moments, { first, last }, pattern.loom, { number, width: pictureWidth() })

const figures = [
  { heading: 'Knit', sentence: 'Knit the first pegs.', picture: figure(1, 4, 1) },
  { heading: 'Cross', sentence: 'Take two.', picture: figure(5, 6, 2) },
  { heading: 'Cross', sentence: 'Move two.', picture: figure(7, 8, 3) },
]
const sheet = figureSheet(figures, { breakLines })

const texts = sheet.layers.flatMap(({ x, y, items }) =>
  items.flatMap((item) =>
    item.kind === 'text' ? [{ ...item, x: item.x + x, y: item.y + y }] : [],
  ),
)
const topOf = (part: string) => texts.find(({ text }) => text.startsWith(part))?.y ?? NaN

test('a figure of several moves shows all pegs that they touch', () => {
  expect(figures[0]?.picture.title).toMatch(/^Pegs 1 to 6 /)
  expect(figures[1]?.picture.title).toMatch(/^Pegs 4 to 9 /)
})

test('every figure has its number and its sentence under it; a heading stands once', () => {
  for (const [index, { sentence }] of figures.entries()) {
    const lines = breakLines(`${index + 1}. ${sentence}`)
    for (const line of lines) expect(texts.map(({ text }) => text)).toContain(line)
  }
  expect(texts.filter(({ text }) => text === 'Cross')).toHaveLength(1)
  expect(topOf('Cross')).toBe(topOf('Knit'))
  expect(topOf('2. Take')).toBeGreaterThan(topOf('Cross') + (figures[1]?.picture.height ?? 0))
  expect(topOf('3. Move')).toBe(topOf('2. Take'))
  const fourth = figureSheet([...figures, ...figures], { breakLines })
  expect(fourth.height).toBeGreaterThan(1.8 * (sheet.height - 2 * sheetSizes.margin))
})

test('a number stands before the sentence only, not in the picture too', () => {
  expect(figures[0]?.picture.layers.map(({ key }) => key)).toContain('number')
  expect(texts.filter(({ text, anchor }) => anchor === 'start' && /^\d+$/.test(text))).toEqual([])
})

test('no line begins with the number of a peg', () => {
  const words = 'Take the loops of pegs 6 and 7 onto the needle; knit pegs 1, 2 and 3 and peg 12.'
  const byWords = (text: string): string[] => text.split(/ (?! )/u)
  const [one] = figures
  if (!one) throw new Error('There is a figure.')
  const { layers } = figureSheet([{ ...one, sentence: words }], { breakLines: byWords })
  const lines = layers
    .filter(({ key }) => key.startsWith('sentence'))
    .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))
  expect(lines).toContain('pegs 6 and 7')
  expect(lines).toContain('pegs 1, 2 and 3')
  expect(lines).toContain('peg 12.')
  expect(lines.slice(1).filter((line) => /^\d/.test(line))).toEqual([])
})

test('nothing stands beyond the sheet, and figures of a row do not touch', () => {
  expect(sheet.width).toBe(sheetSizes.width)
  for (const { picture } of figures)
    expect(picture.width).toBeLessThanOrEqual(pictureWidth() + 0.01)
  for (const { x, y } of texts) {
    expect(x).toBeGreaterThanOrEqual(0)
    expect(y).toBeLessThanOrEqual(sheet.height)
  }
})

test('layers keep keys of their own, and the file is black, white and grey', () => {
  const keys = sheet.layers.map(({ key }) => key)
  expect(new Set(keys).size).toBe(keys.length)
  const colours = writeSvg(sheet).match(/#[0-9a-f]{6}/g) ?? []
  expect(colours.length).toBeGreaterThan(0)
  for (const [, red, green, blue] of colours.map((colour) => /#(..)(..)(..)/.exec(colour) ?? []))
    expect([green, blue]).toEqual([red, red])
})
