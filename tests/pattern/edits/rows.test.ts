import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import {
  deleteRows,
  duplicateRows,
  insertRows,
  otherBands,
  putRows,
  removeBand,
  setBand,
} from '../../../src/pattern/edits/rows'
import { beginningOf } from '../../../src/pattern/edits/beginning'
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

test('a band is set between twice and 99 times, and to what it is already it is no edit', () => {
  const bands = (times: number) => chartOn(setBand(three, 0, 1, times)).bands
  expect(bands(2)).toEqual([{ from: 0, to: 1, times: 2 }])
  expect(bands(2.6)).toEqual([{ from: 0, to: 1, times: 3 }])
  expect(bands(99)).toEqual([{ from: 0, to: 1, times: 99 }])
  expect(bands(100)).toEqual([{ from: 0, to: 1, times: 99 }])
  expect(setBand(three, 0, 1, 1)).toBe(three)
  const banded = setBand(three, 0, 1, 2)
  expect(setBand(banded, 0, 1, 2)).toBe(banded)
  expect(chartOn(setBand(banded, 0, 1, 3)).bands).toEqual([{ from: 0, to: 1, times: 3 }])
  expect(chartOn(setBand(banded, 0, 1, 1)).bands).toEqual([])
})

test('bands stand in rising order, and those that a new one touches go', () => {
  const two = setBand(setBand(three, 2, 2, 5), 0, 0, 4)
  expect(chartOn(two).bands).toEqual([
    { from: 0, to: 0, times: 4 },
    { from: 2, to: 2, times: 5 },
  ])
  expect(chartOn(setBand(two, 0, 1, 3)).bands).toEqual([
    { from: 0, to: 1, times: 3 },
    { from: 2, to: 2, times: 5 },
  ])
  expect(chartOn(setBand(two, 1, 2, 3)).bands).toEqual([
    { from: 0, to: 0, times: 4 },
    { from: 1, to: 2, times: 3 },
  ])
  expect(otherBands(chartOn(two), 0, 0)).toEqual([])
  expect(otherBands(chartOn(two), 0, 2)).toHaveLength(2)
  expect(otherBands(chartOn(two), 1, 1)).toEqual([])
  expect(chartOn(removeBand(two, 0)).bands).toEqual([{ from: 2, to: 2, times: 5 }])
})

test('no row away is no edit', () => {
  expect(deleteRows(three, 1, 0)).toBe(three)
})

test('rows are put in where there is room for all of them', () => {
  const full = newPattern(3, 598)
  const rows = chartOn(three).rows
  expect(putRows(full, 0, rows)).toBe(full)
  expect(chartOn(putRows(full, 0, rows.slice(1))).rows).toHaveLength(600)
})

test('a copy that finds no room for all its rows brings no bands', () => {
  const full = setBand(newPattern(3, 599), 0, 1, 2)
  const copied = chartOn(duplicateRows(full, 0, 1))
  expect([copied.rows.length, copied.bands.length]).toEqual([600, 1])
  const two = setBand(setBand(three, 0, 0, 2), 2, 2, 3)
  expect(chartOn(duplicateRows(two, 0, 0)).bands).toEqual([
    { from: 0, to: 0, times: 2 },
    { from: 1, to: 1, times: 2 },
    { from: 3, to: 3, times: 3 },
  ])
})

test('the beginning of a chart has the rows that its cells allow, and the bands that lie in them', () => {
  const long = setBand(setBand(newPattern(4, 10), 0, 1, 2), 2, 4, 3)
  expect(beginningOf(long, 40)).toBe(long)
  const four = chartOn(beginningOf(long, 19))
  expect([four.rows.length, four.bands]).toEqual([4, [{ from: 0, to: 1, times: 2 }]])
  expect(chartOn(beginningOf(long, 20)).bands).toHaveLength(2)
  expect(chartOn(beginningOf(long, 3)).rows).toHaveLength(1)
})
