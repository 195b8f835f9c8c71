import { expect, test } from 'vitest'
import { layOut } from '../../src/pattern/layout'

test('without a repeat a column is a peg', () => {
  expect(layOut({ columns: 4, repeat: null }, 4)).toMatchObject({
    columnOf: [0, 1, 2, 3],
    over: 0,
  })
})

test('the repeat fills the loom between the edges', () => {
  const layout = layOut({ columns: 5, repeat: { from: 1, to: 3 } }, 11)
  expect(layout.columnOf).toEqual([0, 1, 2, 3, 1, 2, 3, 1, 2, 3, 4])
  expect(layout.copies).toBe(3)
  expect(layout.copyRuns[1]).toEqual({ from: 4, to: 6 })
})

test('pegs that no whole copy reaches are left over', () => {
  expect(layOut({ columns: 4, repeat: { from: 0, to: 3 } }, 10)).toMatchObject({
    copies: 2,
    over: 2,
  })
  expect(layOut({ columns: 12, repeat: null }, 10)).toMatchObject({ over: -2 })
})

test('the same chart on the same loom has the same layout', () => {
  const repeat = { from: 0, to: 1 }
  expect(layOut({ columns: 2, repeat }, 8)).toBe(layOut({ columns: 2, repeat }, 8))
})

test('each copy lies on its pegs, and the edges beside them', () => {
  const layout = layOut({ columns: 6, repeat: { from: 1, to: 3 } }, 10)
  expect(layout).toEqual({
    shape: 'ring',
    pegs: 10,
    columnOf: [0, 1, 2, 3, 1, 2, 3, 4, 5],
    copies: 2,
    over: 1,
    copyRuns: [
      { from: 1, to: 3 },
      { from: 4, to: 6 },
    ],
  })
})

test('a repeat that does not fit once has no copy, and no column lies beyond the loom', () => {
  expect(layOut({ columns: 9, repeat: { from: 1, to: 6 } }, 6)).toMatchObject({
    columnOf: [0, 7, 8],
    copies: 0,
    over: 3,
    copyRuns: [],
  })
  expect(layOut({ columns: 9, repeat: { from: 8, to: 8 } }, 5).columnOf).toEqual([0, 1, 2, 3, 4])
  expect(layOut({ columns: 12, repeat: null }, 3).columnOf).toEqual([0, 1, 2])
})

test('another loom, and another width, have layouts of their own', () => {
  const repeat = { from: 0, to: 1 }
  const one = layOut({ columns: 2, repeat }, 8)
  expect(layOut({ columns: 2, repeat }, 8, 'bar')).toMatchObject({ shape: 'bar' })
  expect(layOut({ columns: 2, repeat }, 6)).not.toBe(one)
  expect(layOut({ columns: 3, repeat }, 8).columnOf).toEqual([0, 1, 0, 1, 0, 1, 2])
})
