import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inOtherUnit, plainRows } from '../../src/pattern/amount'
import { limits } from '../../src/pattern/pattern'
import { pieceLimits } from '../../src/pattern/piece'

const gauge = { stitches: 20, rows: 30 }

test('ten rounds are 3.3 cm, and those are ten rounds', () => {
  const length = inOtherUnit({ rows: 10 }, gauge)
  expect(length).toEqual({ mm: 33 })
  expect(length && inOtherUnit(length, gauge)).toEqual({ rows: 10 })
})

test('changing the unit of plain rows keeps the rows', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: pieceLimits.plainRows.most }),
      fc.integer({ min: 10 * limits.gauge.least, max: 10 * limits.gauge.most }),
      (rows, tenths) => {
        const fine = { stitches: 20, rows: tenths / 10 }
        const length = inOtherUnit({ rows }, fine)
        const isTooLong = (rows * 100) / fine.rows > pieceLimits.length.most
        if (length) expect(plainRows({ gauge: fine }, length)).toBe(rows)
        else expect(isTooLong).toBe(true)
      },
    ),
  )
})

test('without a gauge both begin with what is usual', () => {
  expect(inOtherUnit({ rows: 12 }, null)).toEqual({ mm: 50 })
  expect(inOtherUnit({ mm: 80 }, null)).toEqual({ rows: 10 })
})
