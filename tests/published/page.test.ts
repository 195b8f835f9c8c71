import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { papers } from '../../src/booklet/page/paper'
import { inkTable } from '../../src/drawing/svg'
import { papers as publishedPapers, wcag as guidelines } from './data/standards'

const { values: wcag } = guidelines
const { values: published } = publishedPapers

type Colours = Readonly<Record<string, string>>

const theme = readFileSync(new URL('../../src/bench/theme.css', import.meta.url), 'utf8')

/** The colours of the style sheet: `light-dark(#…, #…)`, of which this one is asked. */
const coloursBy = (scheme: 'light' | 'dark'): Colours =>
  Object.fromEntries(
    [...theme.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);/g)].map(
      ([, name = '', light = '', dark = '']) => [name, scheme === 'light' ? light : dark],
    ),
  )

/** Relative luminance, 0 to 1: WCAG 2.2, definition of terms. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Contrast ratio: WCAG 2.2, definition of terms. */
function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (light + 0.05) / (dark + 0.05)
}

test('contrast is computed as published: black on white is 21 to 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
})

describe.each([
  ['light', coloursBy('light')],
  ['dark', coloursBy('dark')],
])('the screen in %s', (_scheme, colours) => {
  const of = (name: string): string => {
    const found = colours[name]
    if (!found) throw new Error(`theme.css has no --${name}`)
    return found
  }

  test.each([
    ['ink', 'sheet'],
    ['ink', 'bench'],
    ['quiet', 'sheet'],
    ['quiet', 'bench'],
    ['accent', 'sheet'],
    ['accent-ink', 'accent'],
    ['error', 'sheet'],
    ['warning', 'sheet'],
    ['hint', 'sheet'],
    ['ink', 'accent-wash'],
  ])('text: %s on %s (WCAG 2.2, 1.4.3)', (text, ground) => {
    expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(wcag.textContrast)
  })

  test.each([
    ['control', 'sheet'],
    ['accent', 'sheet'],
    ['accent', 'shade'],
    ['ink', 'shade'],
    ['ink', 'unworked'],
  ])('drawn things: %s on %s (WCAG 2.2, 1.4.11)', (drawn, ground) => {
    expect(contrast(of(drawn), of(ground))).toBeGreaterThanOrEqual(wcag.graphicsContrast)
  })
})

test('on paper signs and texts are black, and a no-stitch cell still shows a sign', () => {
  expect(luminance(inkTable.line)).toBe(0)
  expect(luminance(inkTable.solid)).toBe(0)
  for (const ground of [inkTable.ground, inkTable.shade, inkTable.unworked])
    expect(contrast(inkTable.line, ground)).toBeGreaterThanOrEqual(wcag.graphicsContrast)
})

test('paper has its published size (ISO 216; ANSI letter is 8.5 x 11 in)', () => {
  for (const size of ['a4', 'a5', 'letter'] as const) {
    const [width = 0, height = 0] = published[size]
    expect(papers[size].width).toBeCloseTo(width, 5)
    expect(papers[size].height).toBeCloseTo(height, 5)
  }
})
