import type { Row } from '../../../src/pattern/pattern'
import { chartOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import {
  deleteColumns,
  insertColumns,
  keepColumns,
  setColumns,
  setRepeat,
} from '../../../src/pattern/edits/columns'
import { placed } from '../../../src/pattern/row'
import { patternOf, textOf } from './chart-text'

test('columns are inserted as background and deleted', () => {
  expect(textOf(insertColumns(patternOf('p p'), 1, 2))).toEqual(['p k k p'])
  expect(textOf(deleteColumns(patternOf('p k p'), 1, 1))).toEqual(['p p'])
})

test('a cross that loses a column is cut, not dropped', () => {
  const cut = deleteColumns(patternOf('p 2/2_LC . . . p'), 4, 5)
  expect(textOf(cut)).toEqual(['p 2/2_LC . .'])
  expect(placed(chartOn(cut).rows[0] as Row)[1]).toMatchObject({
    column: 1,
    columns: 3,
  })
})

test('the rest of a cross whose start is deleted becomes background', () => {
  expect(textOf(deleteColumns(patternOf('2/2_LC . . . p'), 0, 1))).toEqual(['k k p'])
})

test('the repeat moves and shrinks with the columns', () => {
  const pattern = setRepeat(patternOf('p k k k p'), { from: 1, to: 3 })
  expect(chartOn(insertColumns(pattern, 0)).repeat).toEqual({ from: 2, to: 4 })
  // Before its first column it goes on to the right; what comes in there is no part of it.
  expect(chartOn(insertColumns(pattern, 1)).repeat).toEqual({ from: 2, to: 4 })
  expect(chartOn(insertColumns(pattern, 2)).repeat).toEqual({ from: 1, to: 4 })
  expect(chartOn(deleteColumns(pattern, 0, 1)).repeat).toEqual({ from: 0, to: 1 })
  expect(chartOn(deleteColumns(pattern, 1, 3)).repeat).toBeNull()
})

test('one column always stays', () => {
  const pattern = patternOf('p k')
  expect(deleteColumns(pattern, 0, 1)).toBe(pattern)
  expect(chartOn(setColumns(pattern, 4)).columns).toBe(4)
  expect(textOf(setColumns(pattern, 1))).toEqual(['p'])
})

test('columns are kept, and all beside them taken away', () => {
  expect(textOf(keepColumns(patternOf('p k yo k2tog p'), 1, 3))).toEqual(['k yo k2tog'])
  expect(textOf(keepColumns(patternOf('p k yo'), 0, 1))).toEqual(['p k'])
  expect(textOf(keepColumns(patternOf('p k yo'), 1, 2))).toEqual(['k yo'])
})

test('no column in and none away is no edit', () => {
  const pattern = patternOf('p k p')
  expect(insertColumns(pattern, 1, 0)).toBe(pattern)
  expect(deleteColumns(pattern, 2, 1)).toBe(pattern)
  expect(setColumns(pattern, 3)).toBe(pattern)
})

test('a chart holds 400 columns and no more', () => {
  const most = setColumns(patternOf('p k p'), 500)
  expect(chartOn(most).columns).toBe(400)
  expect(chartOn(most).rows[0]?.cells).toHaveLength(400)
  expect(insertColumns(most, 0)).toBe(most)
})

test('a repeat of which columns at either side go keeps the others', () => {
  const pattern = setRepeat(patternOf('p k k k k p'), { from: 1, to: 4 })
  expect(chartOn(deleteColumns(pattern, 4, 5)).repeat).toEqual({ from: 1, to: 3 })
  expect(chartOn(deleteColumns(pattern, 2, 3)).repeat).toEqual({ from: 1, to: 2 })
  expect(chartOn(deleteColumns(pattern, 5, 5)).repeat).toEqual({ from: 1, to: 4 })
  expect(chartOn(deleteColumns(pattern, 1, 4)).repeat).toBeNull()
  expect(chartOn(deleteColumns(setRepeat(pattern, null), 0, 0)).repeat).toBeNull()
})
