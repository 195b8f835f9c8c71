/** A chart is worked from the loops that the steps before it leave; see the cases, each common practice. */
import { describe, expect, test } from 'vitest'
import { checkPattern } from '../../src/checks/check'
import { checkPiece } from '../../src/checks/piece/check'
import { pegsInWork } from '../../src/loom/state'
import { addChart } from '../../src/pattern/edits/piece'
import { setLoom } from '../../src/pattern/edits/settings'
import type { Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { chartsInOrder, onChart, chartOn } from '../../src/pattern/charts'
import { firstStepOf, workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { patternOf } from './edits/chart-text'
import { stitchOf } from '../../src/stitches/vocabulary'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const gather: Step = { kind: 'bind off', how: 'gather', pegs: null }
const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
const chart = (name = 'Chart', times = 1): Step => ({ kind: 'chart', chart: name, times })

const withSteps = (pattern: Pattern, ...steps: Step[]): Pattern => ({
  ...pattern,
  steps,
})

/** Errors of the piece, and of each chart at the first step that works it. */
const errorsIn = (pattern: Pattern): string[] => [
  ...checkPiece(workPiece(pattern))
    .filter(({ severity, rule }) => severity === 'error' && rule !== 'piece-chart')
    .map(({ message }) => message),
  ...chartsInOrder(pattern).flatMap(({ name }) =>
    checkPattern(workPattern(onChart(pattern, name)))
      .findings.filter(({ severity }) => severity === 'error')
      .map(({ message }) => `${name}: ${message}`),
  ),
]

const loopsAfter = (pattern: Pattern): number[] =>
  workPiece(pattern).steps.map(({ after }) => pegsInWork(after))

const times = (text: string, count: number): string =>
  Array.from({ length: count }, () => text).join(' ')

/** 12 of 48 loops are decreased away, one in four. */
const first = times('k k ssk none', 12)
const second = times('k ssk none none', 12)

describe('no error where hands can work it', () => {
  test('a hat: its crown in two charts with plain rounds between', () => {
    const hat = withSteps(
      addChart(patternOf(first), 'Tip', chartOn(patternOf(second))),
      ...[castOn, knit(10), chart(), knit(3), chart('Tip'), knit(1), gather],
    )
    expect(errorsIn(hat)).toEqual([])
    expect(loopsAfter(hat)).toEqual([48, 48, 36, 36, 24, 24, 0])
  })

  test('a chart that starts from 20 of 32 pegs and grows', () => {
    // Work goes back from peg 20, and each row to the right makes one loop more at its end.
    const row = (held: number): string =>
      ['k', 'yo', 'none'].map((cell, at) => times(cell, [held, 1, 31 - held][at] ?? 0)).join(' ')
    const plain = (held: number): string => `${times('k', held)} ${times('none', 32 - held)}`
    const wider = withSteps(
      setLoom(patternOf(plain(20), row(20), plain(21), row(21)), { shape: 'bar' }),
      { ...castOn, pegs: { from: 0, to: 19 } },
      ...[chart(), knit(2)],
      { kind: 'bind off', how: 'basic', pegs: null },
    )
    expect(errorsIn(wider)).toEqual([])
    expect(loopsAfter(wider)).toEqual([20, 22, 22, 0])
  })

  test('ten plain rounds after a chart that decreases', () => {
    const piece = withSteps(patternOf(first), castOn, chart(), knit(10), gather)
    expect(errorsIn(piece)).toEqual([])
    expect(loopsAfter(piece)).toEqual([48, 36, 36, 0])
  })
})

describe('the right error where they cannot', () => {
  test('the same chart in two steps with other loops before it', () => {
    const piece = withSteps(patternOf(first), castOn, chart(), knit(1), chart(), gather)
    expect(errorsIn(piece)).toEqual([
      'Round 1 of step 4 (Chart) needs 48 stitches, the loom holds 36.',
    ])
  })

  test('a chart that needs more loops than the chart before it leaves', () => {
    const piece = withSteps(
      addChart(patternOf(first), 'Brim', chartOn(patternOf(times('k', 48)))),
      ...[castOn, chart(), chart('Brim'), gather],
    )
    expect(errorsIn(piece)).toEqual([
      'Brim: Round 1 works 12 pegs (4, 8, 12 ... 48), but these pegs are empty.',
    ])
  })
})

test('the chart is worked in the step that is looked at', () => {
  const piece = withSteps(patternOf(first), castOn, chart(), knit(1), chart(), gather)
  expect(firstStepOf(piece, 'Chart')).toBe(1)
  const there = workPattern(piece, undefined, 3)
  expect([there.step, pegsInWork(there.run.start)]).toEqual([3, 36])
  const here = workPattern(piece)
  expect([here.step, pegsInWork(here.run.start)]).toEqual([1, 48])
})
