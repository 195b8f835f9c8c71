/** Own words whose repeat is of another width than the chart's: one finding, not one for each place. */
import { expect, test } from 'vitest'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { compared, messages, piece, repaired } from './helpers'

/** 8 stitches, five times round. */
const cuff = setRepeat(piece(['p, k, p, k*4, p', 'k*8'], { pegs: 40 }), { from: 0, to: 7 })
const plain = 'Rnd 2: Knit.'

test('a repeat that is too long is told with both repeats and where they part', () => {
  const comparison = compared(cuff, ['Rnd 1: *p1, k1, p1, k4, k3; rep from *.', plain])
  expect(messages(comparison)).toEqual([
    "Rnd 1: the repeat in the words is 10 sts, worked 4 times; the chart's is 8 sts, worked 5 times. The words end it with k3 after the first 7 sts, the chart with p1.",
  ])
  const [difference] = comparison.differences
  expect(difference?.advice).toBe("Use the chart's version, or correct the repeat in the words.")
  expect(difference?.fixes.map(({ label }) => label)).toEqual(['Rewrite Rnd 1 from the chart'])
  for (const fix of difference?.fixes ?? []) expect(messages(repaired(comparison, fix))).toEqual([])
})

test('one that parts from the first stitch on, and one that is too short', () => {
  const first = compared(cuff, ['Rnd 1: *k3, p2; rep from * to end.', plain])
  expect(messages(first)).toEqual([
    "Rnd 1: the repeat in the words is 5 sts, worked 8 times; the chart's is 8 sts, worked 5 times. It is k3, p2 in the words, p1, k1, p1, k4, p1 in the chart.",
  ])
  const short = compared(cuff, ['Rnd 1: *p1, k1, p1, k2; rep from * to end.', plain])
  expect(messages(short)).toEqual([
    "Rnd 1: the repeat in the words is 5 sts, worked 8 times; the chart's is 8 sts, worked 5 times.",
  ])
})

test('where one repeat lies whole in the other, places are named as before', () => {
  const half = compared(cuff, ['Rnd 1: *p1, k3; rep from * to end.', plain])
  expect(messages(half).join()).not.toContain('the repeat in the words')
  const same = compared(cuff, ['Rnd 1: *p1, k1, p1, k5; rep from * to end.', plain])
  expect(messages(same).join()).not.toContain('the repeat in the words')
})
