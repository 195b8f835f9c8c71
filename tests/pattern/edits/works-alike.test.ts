/** Whether a turned piece can be worked as well as its own. */
import { describe, expect, test } from 'vitest'
import { chartOn } from '../../../src/pattern/charts'
import { addChart } from '../../../src/pattern/edits/piece'
import { setLoom } from '../../../src/pattern/edits/settings'
import { setEnd, setHeading, setRun } from '../../../src/pattern/edits/turning'
import { firstFault, worksAlike, worksTheSame } from '../../../src/pattern/edits/works-alike'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { patternOf } from './chart-text'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const chart: Step = { kind: 'chart', chart: 'Chart', times: 1 }
const off = (from: number, to: number): Step => ({
  kind: 'bind off',
  how: 'basic',
  pegs: { from, to },
})
const bindOff: Step = { kind: 'bind off', how: 'basic', pegs: null }
const withSteps = (pattern: Pattern, ...steps: Step[]): Pattern => ({ ...pattern, steps })

const ring = newPattern(8, 2)
const bar = setLoom(ring, { shape: 'bar' })
const jumps = setRun(ring, 0, { from: 4, to: 7 })

describe('the first fault', () => {
  test.each<[what: string, pattern: Pattern, fault: ReturnType<typeof firstFault>]>([
    ['of a piece that can be worked', ring, null],
    ['is a row that begins elsewhere than the yarn', jumps, { step: 1 }],
    ['is a row that miscounts', patternOf('k k k k2tog k k'), { step: 1 }],
    ['is a row that works an empty peg', withSteps(ring, castOn, off(0, 1), chart), { step: 2 }],
    ['is an edge that begins elsewhere', withSteps(bar, castOn, chart, off(3, 5)), { step: 2 }],
    [
      'is a turn on a peg that holds one',
      setEnd(
        setRun(setEnd(setRun(ring, 0, { from: 0, to: 4 }), 0, 'German turn'), 1, {
          from: 4,
          to: 4,
        }),
        1,
        'German turn',
      ),
      { step: 1 },
    ],
    ['is a wrap beyond a rake', setEnd(bar, 0, 'wrap'), { step: 1 }],
    ['is no float', patternOf('k sl sl sl sl sl k k'), null],
    [
      'is a row of a chart that no step works',
      addChart(ring, 'Spare', chartOn(setRun(ring, 1, { from: 4, to: 7 }))),
      { chart: 'Spare', row: 1 },
    ],
  ])('%s', (_, pattern, fault) => {
    expect(firstFault(pattern)).toEqual(fault)
  })
})

describe('two pieces are worked alike', () => {
  /** Two rows, there and back, on some pegs beside the join. */
  const mended = (from: number, to: number): Pattern => {
    const rows = setRun(setRun(ring, 0, { from, to }), 1, { from, to })
    const [first, second] =
      from === 0 ? (['forward', 'back'] as const) : (['back', 'forward'] as const)
    return withSteps(setHeading(setHeading(rows, 0, first), 1, second), castOn, chart, bindOff)
  }
  const low = setRun(ring, 0, { from: 0, to: 5 })
  test('where as many stitches lie on each peg, counted from the other end', () => {
    expect(worksAlike(ring, ring)).toBe(true)
    const high = setHeading(setRun(ring, 0, { from: 2, to: 7 }), 0, 'back')
    expect(worksAlike(low, low)).toBe(false)
    expect(worksAlike(ring, high)).toBe(false)
  })

  test('where as many loops are left, and as much goes wrong in each step', () => {
    expect(worksAlike(ring, withSteps(ring, castOn, chart))).toBe(false)
    expect(
      worksAlike(ring, withSteps(ring, castOn, chart, { kind: 'note', text: 'Count.' }, bindOff)),
    ).toBe(false)
    const [early, late] = [mended(0, 3), mended(4, 7)]
    expect(worksAlike(early, late)).toBe(true)
    expect(worksAlike(early, setHeading(late, 0, null))).toBe(false)
  })

  test('with as many changes of the way, where that is asked', () => {
    const back = setHeading(setHeading(ring, 0, 'back'), 1, 'forward')
    expect(worksAlike(ring, back)).toBe(true)
    expect(worksAlike(ring, back, true)).toBe(false)
    expect(worksAlike(back, back, true)).toBe(true)
    const flat = withSteps(
      ring,
      castOn,
      { kind: 'pegs', run: null, toAndFro: true },
      chart,
      bindOff,
    )
    expect(worksAlike(flat, flat, true)).toBe(true)
  })
})

describe('two pieces are worked the same', () => {
  test('row by row, whatever they are called', () => {
    expect(worksTheSame(ring, { ...newPattern(8, 2), title: 'Another' })).toBe(true)
    expect(worksTheSame(ring, newPattern(8, 3))).toBe(false)
    expect(worksTheSame(ring, setEnd(ring, 1, 'wrap'))).toBe(false)
    expect(worksTheSame(ring, setRun(ring, 1, { from: 0, to: 5 }))).toBe(false)
    expect(worksTheSame(ring, setRun(ring, 1, { from: 1, to: 7 }))).toBe(false)
    expect(worksTheSame(ring, setHeading(ring, 1, 'back'))).toBe(false)
    expect(worksTheSame(ring, setHeading(ring, 1, 'forward'))).toBe(true)
    expect(worksTheSame(patternOf('k p'), patternOf('p k'))).toBe(false)
    expect(worksTheSame(patternOf('k k k'), patternOf('1/1_LC . k'))).toBe(false)
    expect(worksTheSame(patternOf('1/1_LC . k'), patternOf('k 1/1_LC .'))).toBe(false)
  })
})
