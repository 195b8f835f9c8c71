import fc from 'fast-check'
import { expect, test } from 'vitest'
import { runsRightToLeft } from '../../src/loom/direction'
import { chartOn } from '../../src/pattern/charts'
import { allOf } from '../../src/pattern/blocks/area'
import { blockIn } from '../../src/pattern/blocks/block'
import { newPattern, shapes, type Pattern } from '../../src/pattern/pattern'
import { termSets } from '../../src/languages/terms'
import { writeBlock } from '../../src/words/block'
import { readBlock, type ReadBlock } from '../../src/words/read/chart/block'
import { readSettingsOf } from '../../src/words/read/reading'
import { arbitraryOneChart } from '../arbitraries'
import { idsIn } from '../cells'
import { patternOf, textOf } from '../pattern/edits/chart-text'

const readFor = (text: string, pattern: Pattern = newPattern(12, 4)): ReadBlock =>
  readBlock(text, readSettingsOf(pattern), chartOn(pattern).columns, pattern.style.background)

const rowsOf = (read: ReadBlock): string[] | string =>
  read.ok ? read.block.rows.map((cells) => idsIn(cells).join(' ')) : read.message

test('a block is text that a person can read', () => {
  const pattern = patternOf('k k k k', 'k k k k', '2/2_RC . . .', 'k2tog yo p p')
  const text = writeBlock(blockIn(pattern, allOf(chartOn(pattern))), { shape: 'ring', terms: 'us' })
  expect(text).toBe(
    [
      'Rnds 1-2: k4.',
      'Rnd 3: 2/2 RC.',
      'Rnd 4: k2tog, yo, p2.',
      'Worked clockwise round the loom seen from above: right to left as you face it.',
      '',
    ].join('\n'),
  )
})

test('on a bar every other row is told from its other end', () => {
  const pattern = patternOf('k p p', 'k p p')
  const text = writeBlock(blockIn(pattern, allOf(chartOn(pattern))), { shape: 'bar', terms: 'us' })
  expect(text.split('\n').slice(0, 2)).toEqual(['Row 1: k1, p2.', 'Row 2: p2, k1.'])
  expect(rowsOf(readFor(text))).toEqual(['k p p', 'k p p'])
})

test('any block, written, reads back the same', () => {
  fc.assert(
    fc.property(
      arbitraryOneChart({ columns: 14, rows: 6, cut: true }),
      fc.constantFrom(...shapes),
      fc.constantFrom(...termSets),
      (pattern, shape, terms) => {
        const block = blockIn(pattern, allOf(chartOn(pattern)))
        const text = writeBlock(block, { shape, terms })
        const settings = { ...readSettingsOf(newPattern()), terms }
        const read = readBlock(text, settings, 3, pattern.style.background)
        const ids = block.rows.map((cells) => idsIn(cells).join(' '))
        expect([rowsOf(read), read.ok && read.lacks, text]).toEqual([ids, null, text])
        expect(read.ok && read.block.rightToLeft).toBe(block.rightToLeft)
      },
    ),
  )
})

test('rows that go on to the end do so in the columns there are', () => {
  expect(rowsOf(readFor('Rnd 1: *k1, p1; rep from * to end.', newPattern(6, 4)))).toEqual([
    'k p k p k p',
  ])
})

test('a lone stitch is not read as one that goes on to the end', () => {
  const pattern = patternOf('sl', 'mb', 'k', 'ptbl')
  const text = writeBlock(blockIn(pattern, allOf(chartOn(pattern))), { shape: 'ring', terms: 'us' })
  expect(rowsOf(readFor(text))).toEqual(['sl', 'mb', 'k', 'ptbl'])
})

test('shorter rows end in ground, and rows worked again stand once', () => {
  const text = 'Rnd 1: k2, p2.\nRnd 2: 2/1 LC.\nRep Rnds 1-2 twice more.'
  expect(rowsOf(readFor(text))).toEqual(['k k p p', '2/1 LC   k'])
})

test('what is not understood is said, and what is is taken', () => {
  const read = readFor('Rnd 1: k2, wobble, p2.')
  expect(rowsOf(read)).toEqual(['k k p p'])
  expect(read.ok && read.lacks).toMatch(/"wobble" is not known/)
})

test('what is no block says so', () => {
  expect(rowsOf(readFor('  '))).toBe('The clipboard is empty.')
  expect(rowsOf(readFor('Dear aunt, the wool has come.'))).toMatch(/There are no rows of stitches/)
  expect(rowsOf(readFor('k'.repeat(200_001)))).toMatch(/too long for a block/)
  const wide = readFor('Rnd 1: k401.', newPattern(400, 2))
  expect(rowsOf(wide)).toMatch(/larger than a chart can be: 400 pegs, 600 rows/)
})

test('words that name a way of working have its look on a loom worked the other way', () => {
  const [clockwise, other] = (['clockwise', 'counterclockwise'] as const).map((direction) => {
    const pattern = patternOf('k p p')
    return { ...pattern, loom: { ...pattern.loom, direction } }
  })
  if (!clockwise || !other) throw new Error('There are two')
  const text = writeBlock(blockIn(other, allOf(chartOn(other))), { shape: 'ring', terms: 'uk' })
  expect(text).toContain('anticlockwise')
  const read = readFor(text, clockwise)
  expect(read.ok && read.block.rightToLeft).toBe(runsRightToLeft('counterclockwise'))
  expect(textOf(other)).toEqual(['k p p'])
})
