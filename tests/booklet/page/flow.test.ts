import fc from 'fast-check'
import { expect, test } from 'vitest'
import { flow, type Block, type Strip } from '../../../src/booklet/page/flow'

const area = { x: 20, y: 20, width: 170, height: 100 }

const strip = (text: string, height = 10): Strip => ({
  height,
  texts: [{ x: 0, y: height, text, face: 'regular', size: 4 }],
  pictures: [],
})
const block = (name: string, lines: number, more: Partial<Block> = {}): Block => ({
  strips: Array.from({ length: lines }, (_, i) => strip(`${name}${i}`)),
  before: 0,
  ...more,
})
const names = (blocks: readonly Block[]) =>
  flow(blocks, area).map(({ texts }) => texts.map(({ text }) => text).join(' '))

test('a heading goes to the next page with what it stands over', () => {
  expect(names([block('a', 8), block('h', 1, { withNext: true }), block('b', 2)])).toEqual([
    'a0 a1 a2 a3 a4 a5 a6 a7',
    'h0 b0 b1',
  ])
})

test('a block that fits on a page is not parted', () => {
  expect(names([block('a', 6), block('b', 5)])).toEqual(['a0 a1 a2 a3 a4 a5', 'b0 b1 b2 b3 b4'])
})

test('a block that is longer than a page is parted between lines', () => {
  expect(names([block('a', 12)])).toEqual(['a0 a1 a2 a3 a4 a5 a6 a7 a8 a9', 'a10 a11'])
})

test('space above a block is left out at the top of a page', () => {
  const [, second] = flow([block('a', 10), block('b', 1, { before: 30 })], area)
  expect(second?.texts).toMatchObject([{ text: 'b0', y: area.y + 10 }])
})

test('a block may ask for a new page', () => {
  expect(names([block('a', 1), block('b', 1, { newPage: true })])).toEqual(['a0', 'b0'])
})

test('a few lines that would have a page for themselves take what stands before them along', () => {
  const page = Array.from({ length: 10 }, (_, i) => block(`${i}.`, 1))
  expect(names([...page, block('z', 1)])).toEqual(['0.0 1.0 2.0 3.0 4.0', '5.0 6.0 7.0 8.0 9.0 z0'])
  // Before what begins a page of its own too.
  expect(names([...page, block('y', 2), block('n', 5, { newPage: true })])).toEqual([
    '0.0 1.0 2.0 3.0 4.0 5.0',
    '6.0 7.0 8.0 9.0 y0 y1',
    'n0 n1 n2 n3 n4',
  ])
})

test('what would leave a page half empty stays where it is', () => {
  expect(names([block('a', 4), block('b', 6), block('z', 1)])).toEqual([
    'a0 a1 a2 a3 b0 b1 b2 b3 b4 b5',
    'z0',
  ])
})

test('every line stands once, in order, and inside the area', () => {
  const blocks = fc.array(
    fc.record({
      lines: fc.integer({ min: 1, max: 25 }),
      before: fc.integer({ min: 0, max: 30 }),
      withNext: fc.boolean(),
      newPage: fc.boolean(),
    }),
    { maxLength: 20 },
  )
  fc.assert(
    fc.property(blocks, (list) => {
      const made = list.map(({ lines, ...rest }, i) => block(`${i}.`, lines, rest))
      const pages = flow(made, area)
      expect(pages.flatMap(({ texts }) => texts.map(({ text }) => text))).toEqual(
        made.flatMap(({ strips }) => strips.flatMap(({ texts }) => texts.map(({ text }) => text))),
      )
      for (const { texts } of pages) {
        expect(texts.length).toBeGreaterThan(0)
        for (const { y } of texts) {
          expect(y - 10).toBeGreaterThanOrEqual(area.y - 1e-6)
          expect(y).toBeLessThanOrEqual(area.y + area.height + 1e-6)
        }
      }
    }),
  )
})
