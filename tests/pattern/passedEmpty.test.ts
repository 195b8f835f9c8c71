/** Empty pegs that the yarn passes between two loops. */
import { describe, expect, test } from 'vitest'
import { setLoom } from '../../src/pattern/edits/settings'
import { setHeading, setRun } from '../../src/pattern/edits/turning'
import type { Pattern } from '../../src/pattern/pattern'
import { atJoin, passedEmpty } from '../../src/pattern/pegs/passedEmpty'
import { workPattern } from '../../src/pattern/work'
import { patternOf } from './edits/chart-text'

const passed = (pattern: Pattern, row: number, forBaby = false, pitch = 9.5) => {
  const run = workPattern(pattern).firstRuns[row]
  const { shape, pegs } = pattern.loom
  return run && passedEmpty(run, { shape, pegs, pitch, longestFloat: 3, forBaby })
}

const gap = patternOf('k k k3tog none none k k k3tog none none', 'k k k none none k k k none none')
const bar = (pattern: Pattern) => setLoom(pattern, { shape: 'bar' })

describe('two empty pegs between loops are passed', () => {
  test('in the row that empties them and in the next; over the join of a round too', () => {
    const inside = { from: 3, to: 4 }
    expect(passed(gap, 0)).toEqual([inside])
    expect(passed(gap, 1)).toEqual([inside, { from: 8, to: 9 }])
    expect(passed(bar(gap), 0)).toEqual([inside])
    expect(passed(bar(gap), 1)).toEqual([inside])
  })

  test('and counted on past the last peg, where they lie on both sides of the join', () => {
    const over = patternOf('none k3tog k k k k k k none', 'none k k k k k k k none')
    const full = patternOf('k3tog none k k k k k k', 'k none k k k k k k')
    expect(passed(over, 1)).toEqual([{ from: 8, to: 9 }])
    expect(passed(bar(over), 1)).toEqual([])
    expect(passed(full, 1)).toEqual([])
    const first = patternOf('none none k3tog k k k', 'none none k k k k')
    expect(passed(first, 1)).toEqual([{ from: 0, to: 1 }])
  })

  test('the way the round goes: back, from the loop beside the yarn', () => {
    const back = setHeading(setHeading(gap, 0, 'back'), 1, 'back')
    expect(passed(back, 1)).toEqual([
      { from: 3, to: 4 },
      { from: 8, to: 9 },
    ])
    expect(passed(setHeading(gap, 1, 'back'), 1)).toEqual([{ from: 3, to: 4 }])
  })

  test('inside the pegs of a short row only', () => {
    expect(passed(setRun(gap, 1, { from: 0, to: 4 }), 1)).toEqual([])
    expect(passed(setRun(gap, 1, { from: 0, to: 5 }), 1)).toEqual([{ from: 3, to: 4 }])
  })
})

test('one empty peg is passed for a baby where no peg may be slipped', () => {
  const one = patternOf('k k k2tog none k k k k', 'k k k none k k k k')
  expect(passed(one, 1)).toEqual([])
  expect(passed(one, 1, true)).toEqual([])
  expect(passed(one, 1, true, 10.5)).toEqual([{ from: 3, to: 3 }])
})

test('nothing is passed where each peg keeps its loop, or the row miscounts', () => {
  expect(passed(patternOf('k p k p'), 0)).toEqual([])
  expect(passed(patternOf('k k none none k k'), 0)).toEqual([])
})

test('a run lies at the join where it touches an end of the pegs', () => {
  expect(
    [
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 8, to: 9 },
      { from: 9, to: 10 },
      { from: 7, to: 8 },
    ].map((run) => atJoin(run, 10)),
  ).toEqual([true, false, true, true, false])
})
