import fc from 'fast-check'
import { expect, test } from 'vitest'
import { excerpt, inQuotes } from '../../src/pattern/excerpt'

test.each([
  ['k2tog', 'k2tog'],
  ['', ''],
  ['  Rnd 1:\n\tk2  p2 ', 'Rnd 1: k2 p2'],
  ['k'.repeat(40), 'k'.repeat(40)],
  ['k'.repeat(41), `${'k'.repeat(39)}…`],
  [`k ${' '.repeat(100_000)} p`, 'k…'],
  ['🧶'.repeat(41), `${'🧶'.repeat(39)}…`],
])('%j is quoted as %j', (text, shown) => {
  expect(excerpt(text)).toBe(shown)
})

test('however long and wild a text is, its excerpt is short and on one line', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 500 }), fc.nat(60), (text, most) => {
      const shown = excerpt(text, most + 1)
      expect(Array.from(shown).length).toBeLessThanOrEqual(most + 1)
      expect(shown).not.toMatch(/[\n\r\t]/)
    }),
  )
})

test('in quotes what cannot be seen is written out', () => {
  expect(inQuotes('k\u0000 "p"')).toBe('"k\\u0000 \\"p\\""')
})
