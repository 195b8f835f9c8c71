import type { Row } from '../../../src/pattern/pattern'
import { chartOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import {
  deleteColumns,
  insertColumns,
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
