import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import {
  deleteRows,
  duplicateRows,
  insertRows,
  otherBands,
  removeBand,
  setBand,
} from '../../../src/pattern/edits/rows'
import { newPattern } from '../../../src/pattern/pattern'
import { rowNumbers, schedule } from '../../../src/pattern/schedule'
import { patternOf, textOf } from './chart-text'

const three = patternOf('k k', 'p p', 'k p')

test('rows are inserted, copied and deleted', () => {
  expect(textOf(insertRows(three, 1))).toEqual(['k k', 'k k', 'p p', 'k p'])
  expect(textOf(duplicateRows(three, 1, 2))).toEqual(['k k', 'p p', 'k p', 'p p', 'k p'])
  expect(textOf(deleteRows(three, 0, 1))).toEqual(['k p'])
})

test('one row always stays', () => {
  expect(deleteRows(three, 0, 2)).toBe(three)
})

test('a chart holds 600 rows and no more', () => {
  const full = newPattern(3, 599)
  expect(chartOn(insertRows(full, 0, 5)).rows).toHaveLength(600)
  const most = insertRows(full, 0, 1)
  expect(insertRows(most, 0, 1)).toBe(most)
})

describe('bands', () => {
  const banded = setBand(three, 1, 2, 3)

  test('are worked as often as they say, and rows are numbered as a row counter counts', () => {
    expect(schedule(chartOn(insertRows(banded, 3))).map(({ row }) => row)).toEqual([
      0, 1, 2, 1, 2, 1, 2, 3,
    ])
    expect(rowNumbers(chartOn(insertRows(banded, 3)))).toEqual([1, 2, 3, 8])
  })

  test('move with rows inserted below and grow with rows inside', () => {
    expect(chartOn(insertRows(banded, 0)).bands).toEqual([{ from: 2, to: 3, times: 3 }])
    expect(chartOn(insertRows(banded, 2)).bands).toEqual([{ from: 1, to: 3, times: 3 }])
  })

  test('shrink with rows deleted and go with their last row', () => {
    expect(chartOn(deleteRows(banded, 0, 0)).bands).toEqual([{ from: 0, to: 1, times: 3 }])
    expect(chartOn(deleteRows(banded, 2, 2)).bands).toEqual([{ from: 1, to: 1, times: 3 }])
    expect(chartOn(deleteRows(banded, 1, 2)).bands).toEqual([])
  })

  test('are copied with their rows; a part of one grows it', () => {
    expect(chartOn(duplicateRows(banded, 0, 2)).bands).toEqual([
      { from: 1, to: 2, times: 3 },
      { from: 4, to: 5, times: 3 },
    ])
    expect(chartOn(duplicateRows(banded, 1, 1)).bands).toEqual([{ from: 1, to: 3, times: 3 }])
  })

  test('other ones are found that rows touch', () => {
    expect(otherBands(chartOn(banded), 0, 1)).toEqual(chartOn(banded).bands)
    expect(otherBands(chartOn(banded), 1, 1)).toEqual(chartOn(banded).bands)
    expect(otherBands(chartOn(banded), 1, 2)).toEqual([])
    expect(otherBands(chartOn(banded), 0, 0)).toEqual([])
  })

  test('replace the bands they touch; once is no band', () => {
    expect(chartOn(setBand(banded, 0, 1, 2)).bands).toEqual([{ from: 0, to: 1, times: 2 }])
    expect(chartOn(setBand(banded, 1, 2, 1)).bands).toEqual([])
    expect(chartOn(removeBand(banded, 0)).bands).toEqual([])
  })
})

test('rows that are worked so often already stay the same piece, so there is nothing to take back', () => {
  const pattern = setBand(patternOf('k k', 'p p', 'k p'), 0, 1, 4)
  expect(setBand(pattern, 0, 1, 4)).toBe(pattern)
  expect(setBand(pattern, 2, 2, 1)).toBe(pattern)
  expect(chartOn(setBand(pattern, 0, 1, 5)).bands).toEqual([{ from: 0, to: 1, times: 5 }])
  expect(chartOn(setBand(pattern, 0, 1, 1)).bands).toEqual([])
  expect(chartOn(setBand(pattern, 1, 1, 4)).bands).toEqual([{ from: 1, to: 1, times: 4 }])
})
