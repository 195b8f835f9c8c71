/** Crosses that an edit takes away or cuts. */
import { expect, test } from 'vitest'
import { chartOn } from '../../../src/pattern/charts'
import { lostStitches } from '../../../src/pattern/columns/lost'
import { patternOf } from '../edits/chart-text'

const lost = (before: readonly string[], after: readonly string[]) =>
  lostStitches(chartOn(patternOf(...before)), chartOn(patternOf(...after))).map(
    ({ row, stitch, wasCut, how }) => `${row}: ${stitch.id}${wasCut ? ' (cut before)' : ''} ${how}`,
  )

test.each([
  ['nothing changed', ['k 2/2_LC . . . k'], ['p 2/2_LC . . . k'], []],
  ['it moved', ['k 2/2_LC . . . k'], ['2/2_LC . . . k k'], []],
  ['it is gone', ['k 2/2_LC . . . k'], ['k k k k k k'], ['0: 2/2 LC gone']],
  ['it is cut', ['k 2/2_LC . . . k'], ['k 2/2_LC . . k k'], ['0: 2/2 LC cut']],
  ['another stands in its place', ['k 2/2_LC . . . k'], ['k 2/2_RC . . . k'], []],
  ['another stands beside its place', ['2/2_LC . . . k'], ['k 2/2_RC . . .'], ['0: 2/2 LC gone']],
  ['one of other columns', ['k 2/2_LC . . . k'], ['k 1/1_LC . k k k'], ['0: 2/2 LC gone']],
  ['a cut one is gone', ['k k 2/2_LC . .'], ['k k k k k'], ['0: 2/2 LC (cut before) gone']],
  ['a cut one is cut otherwise', ['k k 2/2_LC . .'], ['k k k 2/2_LC .'], []],
  ['a cut one is whole', ['k 2/2_LC . . k k'], ['k 2/2_LC . . . k'], []],
  [
    'one of two stays',
    ['1/1_LC . 1/1_LC . k', 'k k k k k'],
    ['k k k 1/1_LC .', 'k k k k k'],
    ['0: 1/1 LC gone'],
  ],
  ['in the second row', ['k k k', 'k 1/1_LC .'], ['k k k', 'k k k'], ['1: 1/1 LC gone']],
  ['fewer columns, at the same place', ['k 1/1_LC . k'], ['k 1/1_RC .'], ['0: 1/1 LC gone']],
  ['another number of rows', ['k 1/1_LC .'], ['k k k', 'k k k'], []],
])('%s', (_, before, after, told) => {
  expect(lost(before, after)).toEqual(told)
})
