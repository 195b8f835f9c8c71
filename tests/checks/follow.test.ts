/** Which strands over empty pegs are one ladder. */
import { expect, test } from 'vitest'
import { followLadders, isFromBefore, sharedPegs, widthOf } from '../../src/checks/ladders/follow'
import { castOn, type LoomState } from '../../src/loom/state'
import { emptyStack } from '../../src/loom/strand'
import type { Run } from '../../src/pattern/pattern'

const pegs = 10
/** The loom with these pegs, from 0, empty. */
const without = (...empty: number[]): LoomState => {
  const full = castOn(pegs)
  return {
    ...full,
    stacks: full.stacks.map((stack, peg) => (empty.includes(peg) ? emptyStack : stack)),
  }
}
const row = (after: LoomState, ...passed: Run[]) => ({ after, passed })
const ladders = (...rows: ReturnType<typeof row>[]) =>
  followLadders(rows).map(({ first, rows: count, widestAt, widest }) => [
    first,
    count,
    widestAt,
    widthOf(widest),
  ])

const two = { from: 3, to: 4 }
const four = { from: 2, to: 5 }

test('strands over the same pegs, one above the other, are one ladder', () => {
  expect(ladders(row(without(3, 4), two), row(without(3, 4), two))).toEqual([[0, 2, 0, 2]])
  expect(ladders(row(castOn(pegs)), row(without(3, 4), two))).toEqual([[1, 1, 1, 2]])
})

test('it is told where it is widest first', () => {
  const wide = without(2, 3, 4, 5)
  expect(ladders(row(without(3, 4), two), row(wide, four), row(wide, four))).toEqual([[0, 3, 1, 4]])
  expect(ladders(row(wide, four), row(without(3, 4), two))).toEqual([[0, 2, 0, 4]])
})

test('rows that do not come there leave it one; a loop there between makes it two', () => {
  expect(ladders(row(without(3, 4), two), row(without(3, 4)), row(without(3, 4), two))).toEqual([
    [0, 2, 0, 2],
  ])
  expect(ladders(row(without(3, 4), two), row(without(4)), row(without(3, 4), two))).toEqual([
    [0, 2, 0, 2],
  ])
  expect(ladders(row(without(3, 4), two), row(castOn(pegs)), row(without(3, 4), two))).toEqual([
    [0, 1, 0, 2],
    [2, 1, 2, 2],
  ])
})

test('strands beside it are ladders of their own', () => {
  const other = { from: 7, to: 8 }
  const both = without(3, 4, 7, 8)
  expect(ladders(row(both, two, other), row(both, two))).toEqual([
    [0, 2, 0, 2],
    [0, 1, 0, 2],
  ])
  expect(ladders(row(both, two), row(both, other))).toEqual([
    [0, 1, 0, 2],
    [1, 1, 1, 2],
  ])
})

test('pegs that runs share are found over the join', () => {
  expect(sharedPegs(two, four, pegs)).toEqual([3, 4])
  expect(sharedPegs({ from: 5, to: 7 }, four, pegs)).toEqual([5])
  expect(sharedPegs({ from: 8, to: 11 }, { from: 0, to: 1 }, pegs)).toEqual([0, 1])
  expect(sharedPegs({ from: 0, to: 1 }, { from: 9, to: 10 }, pegs)).toEqual([0])
  expect(sharedPegs(two, { from: 6, to: 7 }, pegs)).toEqual([])
})

test('a ladder that the loom had before is none of the rows', () => {
  const [ladder] = followLadders([row(without(3, 4), two)])
  if (!ladder) throw new Error('There is a ladder.')
  expect(isFromBefore(ladder, without(3, 4))).toBe(true)
  expect(isFromBefore(ladder, without(3))).toBe(false)
  expect(isFromBefore({ ...ladder, first: 1 }, without(3, 4))).toBe(false)
})
