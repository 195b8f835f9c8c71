import { expect, test } from 'vitest'
import { setRun } from '../../../src/pattern/edits/turning'
import { erase, eraseAll, landing, paint, paintAll } from '../../../src/pattern/edits/paint'
import { patternOf, textOf } from './chart-text'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { setLoom } from '../../../src/pattern/edits/settings'
import type { Pattern } from '../../../src/pattern/pattern'
import { stitchOf } from '../../../src/stitches/vocabulary'

const bar = (row: string): Pattern => setLoom(patternOf(row), { shape: 'bar' })

test('a stitch is put where it is pointed', () => {
  expect(textOf(paint(patternOf('k k k'), stitchOf('p'), 0, 1))).toEqual(['k p k'])
})

test('painting what is there already changes nothing, not even the identity', () => {
  const pattern = patternOf('k p k')
  expect(paint(pattern, stitchOf('p'), 0, 1)).toBe(pattern)
})

test('a cross lands whole and the rest of a stitch it touches becomes background', () => {
  expect(textOf(paint(patternOf('k 2/2_LC . . . k'), stitchOf('1/1 RC'), 0, 0))).toEqual([
    '1/1_RC . k k k k',
  ])
})

test('a landing tells what it takes away', () => {
  expect(landing(patternOf('k 2/2_LC . . . p'), stitchOf('1/1 LC'), 0, 4)).toEqual({
    can: true,
    columns: { from: 4, to: 5 },
    replaces: ['2/2 LC', 'p'].map(stitchOf),
  })
})

test('a cross that would run over the join of the round cannot land, and says why', () => {
  const pattern = patternOf('k k k k k k')
  expect(landing(pattern, stitchOf('2/2 LC'), 0, 4)).toEqual({
    can: false,
    columns: { from: 4, to: 5 },
    reason: '2/2 LC needs 4 pegs; only 2 are left before the end of the round.',
  })
  expect(paint(pattern, stitchOf('2/2 LC'), 0, 4)).toBe(pattern)
})

test('a short row takes stitches only where it works', () => {
  const pattern = setRun(patternOf('k k k k k k'), 0, { from: 1, to: 3 })
  expect(landing(pattern, stitchOf('p'), 0, 4)).toMatchObject({
    can: false,
    reason: 'Row 1 works only pegs 2 to 4.',
  })
  expect(landing(pattern, stitchOf('p'), 0, 3).can).toBe(true)
})

test('erasing any cell of a cross takes the whole of it', () => {
  expect(textOf(erase(patternOf('p 2/2_LC . . . p'), 0, 3))).toEqual(['p k k k k p'])
})

test('erasing background changes nothing', () => {
  const pattern = patternOf('k p')
  expect(erase(pattern, 0, 0)).toBe(pattern)
})

const threeRows = ['k k k k k', 'k k k k k', 'k k k k k']

test('a block is painted to its last row and column, and nothing beside it', () => {
  const pattern = patternOf(...threeRows)
  const painted = paintAll(pattern, stitchOf('p'), { from: 1, to: 2 }, { from: 1, to: 3 })
  expect(textOf(painted)).toEqual(['k k k k k', 'k p p p k', 'k p p p k'])
})

test('a block is painted with stitches side by side, as many as fit into it', () => {
  const pattern = patternOf(...threeRows)
  const painted = paintAll(pattern, stitchOf('1/1 LC'), { from: 0, to: 0 }, { from: 0, to: 4 })
  expect(textOf(painted)[0]).toBe('1/1_LC . 1/1_LC . k')
})

test('a block is made plain to its last row and column, and nothing beside it', () => {
  const pattern = patternOf('p p p p p', 'p p p p p', 'p p p p p')
  const erased = eraseAll(pattern, { from: 1, to: 2 }, { from: 1, to: 3 })
  expect(textOf(erased)).toEqual(['p p p p p', 'p k k k p', 'p k k k p'])
})

test.each<[where: string, pattern: Pattern, column: number, reason: string]>([
  [
    'on a bar',
    bar('k k k k k k'),
    5,
    '2/2 LC needs 4 pegs; only 1 is left before the edge of the piece.',
  ],
  [
    'at the end of a repeat',
    setRepeat(patternOf('k k k k k k'), { from: 2, to: 5 }),
    3,
    '2/2 LC needs 4 pegs; only 3 are left before the edge of the repeat.',
  ],
  [
    'behind a repeat',
    setRepeat(patternOf('k k k k k k'), { from: 0, to: 3 }),
    4,
    '2/2 LC needs 4 pegs; only 2 are left before the end of the round.',
  ],
  ['before the chart', patternOf('k k k k k'), -1, 'There is no peg 0 in row 1 of the chart.'],
  ['after the chart', patternOf('k k k k k'), 5, 'There is no peg 6 in row 1 of the chart.'],
])('a cross cannot land %s, and why', (_, pattern, column, reason) => {
  expect(landing(pattern, stitchOf('2/2 LC'), 0, column)).toMatchObject({ can: false, reason })
})

test('a row that is not there takes no stitch', () => {
  const pattern = patternOf('k k')
  expect(landing(pattern, stitchOf('p'), 1, 0)).toMatchObject({
    can: false,
    reason: 'There is no peg 1 in row 2 of the chart.',
  })
  expect(paint(pattern, stitchOf('p'), 1, 0)).toBe(pattern)
  expect(erase(pattern, 1, 0)).toBe(pattern)
  expect(erase(pattern, 0, 2)).toBe(pattern)
})

test('a cross lands in a short row where all its pegs are worked, in any copy of the repeat', () => {
  const short = setRun(patternOf('k k k k k k'), 0, { from: 1, to: 4 })
  expect([0, 1, 2].map((column) => landing(short, stitchOf('2/2 LC'), 0, column).can)).toEqual([
    false,
    true,
    false,
  ])
  const again = setLoom(setRepeat(patternOf('k k k k'), { from: 0, to: 3 }), { pegs: 12 })
  const last = setRun(again, 0, { from: 8, to: 11 })
  expect(landing(last, stitchOf('2/2 LC'), 0, 0).can).toBe(true)
})

test('what is taken away is told: not background, and a cross of which only a cell is touched', () => {
  const pattern = patternOf('k p 1/1_LC . k')
  const replaced = (column: number) => {
    const found = landing(pattern, stitchOf('1/1 RC'), 0, column)
    return found.can && found.replaces.map(({ id }) => id)
  }
  expect([0, 1, 2, 3].map(replaced)).toEqual([['p'], ['p', '1/1 LC'], ['1/1 LC'], ['1/1 LC']])
})
