import { chartOn } from '../../src/pattern/charts'
import { expect, test } from 'vitest'
import { setGauge } from '../../src/pattern/edits/settings'
import { setBand } from '../../src/pattern/edits/rows'
import { setRun } from '../../src/pattern/edits/turning'
import { newPattern } from '../../src/pattern/pattern'
import { sizeOf } from '../../src/pattern/size'

// Common practice: round = stitches / gauge; rounds = length x rounds per unit.
test('the size follows from pegs, rounds and gauge; bands count each time', () => {
  const pattern = setGauge(setBand(newPattern(36, 12), 0, 1, 10), { stitches: 18, rows: 25 })
  expect(sizeOf(chartOn(pattern), pattern)).toEqual({ width: 200, height: 120 })
})

test('short rows do not make a piece longer, and without a gauge there is no size', () => {
  const pattern = newPattern(36, 10)
  expect(sizeOf(chartOn(pattern), pattern)).toBeNull()
  const short = setRun(setGauge(pattern, { stitches: 20, rows: 30 }), 4, { from: 0, to: 9 })
  expect(sizeOf(chartOn(short), short)?.height).toBeCloseTo(30, 9)
})
