import { expect, test } from 'vitest'
import { setRun } from '../../../src/pattern/edits/turning'
import { erase, eraseAll, landing, paint, paintAll } from '../../../src/pattern/edits/paint'
import { patternOf, textOf } from './chart-text'
import { stitchOf } from '../../../src/stitches/vocabulary'

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
