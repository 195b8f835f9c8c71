import { expect, it } from 'vitest'
import { wrongSideRow } from '../../src/words/wrongSide'

const flat = { shape: 'bar', needles: false } as const

it.each([
  ['Row 1 (RS): Knit.\nRow 2 (WS): k2, p2.', 'Row 2 (WS'],
  ['Row 2 and all wrong-side rows: purl.', 'Row 2 and all wrong-side'],
  ['WS rows: purl', 'WS rows:'],
])('wrong-side rows of flat words are found: %s', (text, said) => {
  const range = wrongSideRow(text, flat)
  expect(range && text.slice(range.from, range.to)).toBe(said)
})

it('nothing is said of words that have none, or are read for needles, or on a ring', () => {
  const text = 'Row 1 (RS): Knit.\nRow 2 (WS): Purl.'
  expect(wrongSideRow('Row 1 (RS): Knit.\nRow 2: Purl. The wrong side is smooth.', flat)).toBe(null)
  expect(wrongSideRow(text, { ...flat, needles: true })).toBe(null)
  expect(wrongSideRow(text, { ...flat, shape: 'ring' })).toBe(null)
})
