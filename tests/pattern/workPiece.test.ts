import { namedOn } from '../../src/pattern/charts'
import { paint } from '../../src/pattern/edits/paint'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bindOffs, castOns } from '../../src/loom/move'
import { castOn } from '../../src/loom/state'
import { addChart, addStep, changeStep } from '../../src/pattern/edits/piece'
import { setGauge, setLoom } from '../../src/pattern/edits/settings'
import { shortRowChart } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { totalsOf } from '../../src/pattern/totals'
import { chartWork, chartWorks } from '../../src/pattern/work'
import { loopsLeft, workPiece, type PieceWork } from '../../src/pattern/workPiece'
import { arbitraryPattern, arbitraryStep } from '../arbitraries'
import { stitchOf } from '../../src/stitches/vocabulary'

const withSteps = (pattern: Pattern, steps: readonly Step[]): Pattern => ({
  ...pattern,
  steps,
})

const faultsOf = ({ steps }: PieceWork) =>
  steps.flatMap(({ rows }) => rows?.rows.flatMap(({ faults }) => faults) ?? [])

/** All but how many rows had to be worked to get there. */
const worked = ({ steps, end, rows }: PieceWork) => ({
  end,
  rows,
  steps: steps.map((step) => ({ ...step, rows: step.rows?.rows })),
})

test.each(castOns)('cast on by %s: a loop on every peg, as a chart begins', (how) => {
  const pattern = withSteps(newPattern(12), [{ kind: 'cast on', how, pegs: null }])
  for (const shape of ['ring', 'bar'] as const) {
    const { end } = workPiece({ ...pattern, loom: { ...pattern.loom, shape } })
    expect(end).toEqual(castOn(12))
  }
})

test.each(bindOffs)('bound off by %s: no loop is left, on any loom', (how) => {
  for (const pegs of [5, 12, 37]) {
    const pattern = newPattern(pegs)
    const work = workPiece(changeStep(pattern, 2, { kind: 'bind off', how, pegs: null }))
    expect(work.steps.flatMap(({ edge }) => edge?.faults ?? [])).toEqual([])
    expect(loopsLeft(work)).toBe(0)
  }
})

describe('bound off from where the yarn is', () => {
  const all: Step = { kind: 'bind off', how: 'basic', pegs: null }
  const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
  const on = (from: number, to: number): Step => ({
    kind: 'pegs',
    run: { from, to },
    toAndFro: true,
  })
  const open: Step = { kind: 'pegs', run: null, toAndFro: true }
  const closed: Step = { kind: 'pegs', run: null, toAndFro: false }
  const off = (from: number, to: number, how: (typeof bindOffs)[number] = 'basic'): Step => ({
    kind: 'bind off',
    how,
    pegs: { from, to },
  })

  /** The pegs of the last step in the order they are worked, from 1; "!" where the yarn is elsewhere. */
  const order = (shape: 'ring' | 'bar', ...steps: Step[]): string => {
    const pattern = newPattern(8, 2)
    const work = workPiece(
      withSteps({ ...pattern, loom: { ...pattern.loom, shape } }, [
        { kind: 'cast on', how: 'e-wrap', pegs: null },
        ...steps,
      ]),
    )
    const { edge } = work.steps.at(-1) ?? {}
    const jumps = edge?.faults.some(({ kind }) => kind === 'start')
    return `${edge?.way.pegs.map((peg) => peg + 1).join(' ')}${jumps ? ' !' : ''}`
  }

  test('a whole piece: after rounds, to and fro over an opening, on a bar', () => {
    expect(order('ring', knit(3), all)).toBe('1 2 3 4 5 6 7 8')
    expect(order('ring', open, knit(2), all)).toBe('1 2 3 4 5 6 7 8')
    expect(order('ring', open, knit(3), all)).toBe('8 7 6 5 4 3 2 1')
    expect(order('ring', open, knit(3), closed, knit(1), all)).toBe('1 2 3 4 5 6 7 8')
    expect(order('bar', knit(2), all)).toBe('1 2 3 4 5 6 7 8')
    expect(order('bar', knit(3), all)).toBe('8 7 6 5 4 3 2 1')
  })

  test('a part: from the end beside the yarn, whichever way the last row went', () => {
    for (const shape of ['ring', 'bar'] as const) {
      expect(order(shape, on(0, 3), knit(4), off(0, 3))).toBe('1 2 3 4')
      expect(order(shape, on(0, 3), knit(3), off(0, 3))).toBe('4 3 2 1')
      expect(order(shape, on(0, 3), knit(3), off(4, 7))).toBe('5 6 7 8')
      expect(order(shape, on(0, 3), knit(3), off(5, 7))).toBe('6 7 8 !')
    }
    expect(order('ring', on(0, 3), knit(4), off(4, 7))).toBe('8 7 6 5')
    expect(order('bar', on(0, 3), knit(4), off(4, 7))).toBe('5 6 7 8 !')
  })

  test('what is left of a round goes on over the join; an opening is not crossed', () => {
    expect(order('ring', on(0, 2), knit(1), off(3, 4), closed, all)).toBe('6 7 8 1 2 3')
    expect(order('ring', on(0, 2), knit(1), off(3, 4), open, all)).toBe('1 2 3 6 7 8 !')
  })

  test('gathered loops become a ring; halves begin at an end or at their fold', () => {
    expect(order('bar', on(0, 1), knit(1), off(0, 3, 'gather'))).toBe('3 4 1 2')
    expect(order('bar', on(0, 3), knit(1), off(0, 7, 'graft'))).toBe('5 6 7 8 1 2 3 4')
    expect(order('ring', on(0, 3), knit(1), off(0, 7, 'three-needle'))).toBe('5 6 7 8 1 2 3 4')
    expect(order('ring', on(0, 2), knit(1), off(0, 7, 'three-needle'))).toBe('1 2 3 4 5 6 7 8 !')
    expect(order('bar', on(0, 2), knit(1), off(0, 7, 'graft'))).toBe('1 2 3 4 5 6 7 8')
  })

  test('cast on again from where the yarn is', () => {
    const on2 = (from: number, to: number): Step => ({
      kind: 'cast on',
      how: 'chain',
      pegs: { from, to },
    })
    expect(order('ring', on(0, 2), knit(1), off(3, 4), on2(3, 4))).toBe('5 4')
    expect(order('ring', knit(1), on(6, 7), knit(1), off(5, 5), on2(5, 5))).toBe('6')
    expect(order('ring', on(0, 2), knit(2), off(3, 4), on2(3, 4))).toBe('4 5')
    expect(order('bar', on(0, 2), knit(1), off(3, 4), on(0, 2), knit(1), on2(3, 4))).toBe('4 5 !')
  })
})

test('plain rows to a length go through the gauge', () => {
  const pattern = setGauge(newPattern(36), { stitches: 25, rows: 35 })
  const foot: Step = { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 120 } }
  const work = workPiece(addStep(pattern, 2, foot))
  expect(work.steps[2]?.rows?.rows.length).toBe(42)
  expect(work.rows).toBe(12 + 42)
})

test('a chart is worked as often as its step says, from where the last time ended', () => {
  const pattern = newPattern(36, 4)
  const work = workPiece(changeStep(pattern, 1, { kind: 'chart', chart: 'Chart', times: 3 }))
  expect(work.steps[1]?.rows?.rows.length).toBe(12)
})

test('a heel is a section like any other: one loop on each peg after it', () => {
  const pattern = newPattern(40, 4)
  const heel = shortRowChart(pattern.loom, usualHeel(pattern.loom))
  if (!heel.ok) throw new Error(heel.message)
  const withHeel = addStep(addChart(pattern, 'Heel', heel.chart), 2, {
    kind: 'chart',
    chart: 'Heel',
    times: 1,
  })
  const work = workPiece(withHeel)
  expect(work.steps[2]?.after.stacks.every(({ length }) => length === 1)).toBe(true)
  expect(loopsLeft(work)).toBe(0)
})

describe('pegs in work', () => {
  const opening = withSteps(newPattern(20, 2), [
    { kind: 'cast on', how: 'e-wrap', pegs: null },
    { kind: 'pegs', run: null, toAndFro: true },
    { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 6 } },
    { kind: 'pegs', run: null, toAndFro: false },
    { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 3 } },
  ])

  test('to and fro on a ring leaves an opening at its join, and the round goes on from there', () => {
    const work = workPiece(opening)
    expect(work.steps[2]?.rows?.rows.map(({ heading }) => heading)).toEqual([
      'forward',
      'back',
      'forward',
      'back',
      'forward',
      'back',
    ])
    expect(faultsOf(work)).toEqual([])
  })

  test('a run of pegs is worked to and fro; the other loops wait', () => {
    const work = workPiece(
      withSteps(newPattern(20, 2), [
        { kind: 'cast on', how: 'e-wrap', pegs: null },
        { kind: 'pegs', run: { from: 0, to: 9 }, toAndFro: true },
        { kind: 'plain', stitch: stitchOf('p'), amount: { rows: 4 } },
        { kind: 'bind off', how: 'basic', pegs: { from: 0, to: 9 } },
      ]),
    )
    const { after } = work.steps[2] ?? {}
    expect(after?.stacks.map(([loop]) => loop?.kind)).toEqual([
      ...new Array<string>(10).fill('purl'),
      ...new Array<string>(10).fill('cast-on'),
    ])
    expect(loopsLeft(work)).toBe(10)
  })
})

describe('any piece at all', () => {
  test('worked from its last version it is the piece worked from nothing', () => {
    fc.assert(
      fc.property(
        arbitraryPattern({ rows: 3 }).chain((pattern) =>
          fc.tuple(
            fc.constant(pattern),
            fc.nat(6),
            arbitraryStep(pattern.loom.pegs, [namedOn(pattern).name]),
          ),
        ),
        ([pattern, at, step]) => {
          const before = workPiece(pattern)
          const after = addStep(pattern, at, step)
          expect(worked(workPiece(after, before))).toEqual(worked(workPiece(after)))
        },
      ),
      { numRuns: 60 },
    )
  })

  test('rows that stood on some pegs are laid anew where they come to stand on all', () => {
    const knit = { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 3 } } as const
    const one = { kind: 'pegs', run: { from: 7, to: 7 }, toAndFro: false } as const
    const plain = newPattern(13, 1)
    const first = { ...plain, steps: [one, knit, knit] }
    const moved = { ...plain, steps: [knit, knit, one] }
    expect(worked(workPiece(moved, workPiece(first)))).toEqual(worked(workPiece(moved)))
  })

  test('an edit of the last step works no other step again', () => {
    const pattern = newPattern(36, 12)
    const before = workPiece(pattern)
    const after = workPiece(
      changeStep(pattern, 2, { kind: 'bind off', how: 'gather', pegs: null }),
      before,
    )
    expect(after.steps[0]).toBe(before.steps[0])
    expect(after.steps[1]).toBe(before.steps[1])
  })
})

describe('totals', () => {
  const pattern = setGauge(newPattern(36, 10), { stitches: 20, rows: 30 })

  test('rows, stitches and moves of each step and of the whole', () => {
    const { steps, whole } = totalsOf(workPiece(pattern))
    expect(steps.map(({ rows, moves }) => [rows, moves])).toEqual([
      [0, 36],
      [10, 360],
      // Each peg is knitted; 35 times a loop is moved, lifted over and moved back; one is let go.
      [0, 36 + 3 * 35 + 1],
    ])
    expect([...whole.stitches]).toEqual([[stitchOf('k'), 360]])
  })

  test('steps that name pegs beyond a loom that was made smaller are counted on its last peg', () => {
    const edge = { kind: 'cast on', how: 'e-wrap', pegs: { from: 30, to: 33 } } as const
    const small = setLoom(addStep(pattern, 1, edge), { pegs: 12 })
    expect(
      totalsOf(workPiece(small))
        .steps.map(({ moves }) => moves)
        .slice(0, 2),
    ).toEqual([12, 1])
  })

  test('moves of a cross counted by hand: carrying and turning the yarn are none', () => {
    const plain = newPattern(12, 1)
    const movesOf = (crossing: 'knit then move' | 'move then knit', id: string) =>
      totalsOf(
        workPiece({ ...paint(plain, stitchOf(id), 0, 4), making: { ...plain.making, crossing } }),
      ).steps[1]?.moves
    // One loop goes to the spare needle, one to the other peg, the first back to its place; both are knitted.
    for (const id of ['1/1 LC', '1/1 RC']) {
      expect(movesOf('move then knit', id)).toBe(10 + 3 + 2)
      expect(movesOf('knit then move', id)).toBe(10 + 3 + 2)
    }
  })

  test('a piece of as many plain stitches as the swatch weighs what the swatch weighs', () => {
    const weighed = {
      ...pattern,
      swatch: { stitches: 36, rows: 10, grams: 9 },
    }
    expect(totalsOf(workPiece(weighed)).steps[1]?.grams).toBeCloseTo(9)
  })

  test('an e-wrap takes more yarn than a flat knit (common practice)', () => {
    const yarnOf = (knit: 'e-wrap' | 'flat') =>
      totalsOf(workPiece({ ...pattern, making: { ...pattern.making, knit } })).steps[1]?.yarn ?? 0
    expect(yarnOf('e-wrap')).toBeGreaterThan(yarnOf('flat'))
  })

  test.each([
    ['2/2 LC', 2, 2],
    ['2/2 RC', 2, 2],
    ['1/3 LC', 1, 3],
    ['3/1 LC', 3, 1],
    ['3/1 RC', 3, 1],
  ] as const)('%s takes as much more yarn as all of its loops lean', (id, front, back) => {
    const yarn = (p: Pattern) => totalsOf(workPiece(p)).steps[1]?.yarn ?? 0
    const plain = setGauge(newPattern(36, 1), { stitches: 20, rows: 25 })
    const more = yarn(paint(plain, stitchOf(id), 0, 8)) - yarn(plain)
    // Stitches of 5 x 4 mm: each group goes over the other, and both legs of a loop lean (Pythagoras).
    const leg = (pegs: number) => Math.hypot(5 * pegs, 4) - 4
    expect(more).toBeCloseTo(2 * (front * leg(back) + back * leg(front)))
  })

  test('a basic bind-off takes a knitted stitch for each loop', () => {
    const plain = setGauge(newPattern(36, 1), { stitches: 20, rows: 25 })
    const [, row, edge] = totalsOf(workPiece(plain)).steps
    expect(edge?.yarn).toBeCloseTo(row?.yarn ?? 0)
  })

  test('time goes by the designer’s own pace', () => {
    const paced = { ...pattern, pace: 30 }
    expect(totalsOf(workPiece(paced)).steps[1]?.minutes).toBe(12)
    expect(totalsOf(workPiece(pattern)).whole.minutes).toBeNull()
  })
})

// Common practice: a drawstring is woven in front of one peg and behind the next, over two rounds.
describe('a drawstring cast-on', () => {
  const drawstring = (from: number, to: number): Step => ({
    kind: 'cast on',
    how: 'drawstring',
    pegs: { from, to },
  })
  const run = (shape: 'ring' | 'bar', pegs: number, ...steps: Step[]) => {
    const pattern = newPattern(pegs)
    const work = workPiece(withSteps({ ...pattern, loom: { ...pattern.loom, shape } }, steps))
    const edge = work.steps.at(-1)?.edge
    return { first: edge?.way.pegs[0], faults: edge?.faults, end: work.end }
  }

  test.each([7, 8])('puts a loop on each of %i pegs and leaves no float', (pegs) => {
    for (const shape of ['ring', 'bar'] as const) {
      const { faults, end } = run(shape, pegs, drawstring(0, pegs - 1))
      expect(faults).toEqual([])
      expect(end.stacks.map(({ length }) => length)).toEqual(Array(pegs).fill(1))
      expect([end.yarn.gap, end.float]).toEqual([0, 0])
    }
  })

  test('goes there and back on some of the pegs, to where another cast-on would end', () => {
    for (const shape of ['ring', 'bar'] as const) {
      const { first, faults, end } = run(shape, 8, drawstring(2, 5))
      expect(first).toBe(5)
      expect(faults).toEqual([])
      expect(end.yarn.gap).toBe(6)
    }
  })
})

test('a chart is read at each of its times, with the loom as it is then', () => {
  const pattern = withSteps(newPattern(6, 2), [
    { kind: 'cast on', how: 'e-wrap', pegs: null },
    { kind: 'chart', chart: 'Chart', times: 3 },
    { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 1 } },
  ])
  const piece = workPiece(pattern)
  const all = piece.steps[1]?.rows
  const works = chartWorks(piece, 1)
  expect(works.map(({ run }) => run.rows)).toEqual(
    [0, 2, 4].map((from) => all?.rows.slice(from, from + 2)),
  )
  expect(works.map(({ run }) => run.given)).toEqual(
    [0, 2, 4].map((from) => all?.given.slice(from, from + 2)),
  )
  expect(works.map(({ run }) => [run.start, run.end])).toEqual(
    [0, 2, 4].map((from) => [all?.rows[from]?.before, all?.rows[from + 1]?.after]),
  )
  expect(works.map(({ step, passes }) => [step, passes.length])).toEqual([
    [1, 2],
    [1, 2],
    [1, 2],
  ])
  expect(chartWork(piece, 0)).toBeNull()
  expect(chartWork(piece, 2)).toBeNull()
  expect(chartWorks(piece, 2)).toEqual([])
  expect(chartWorks(piece, 9)).toEqual([])
  const once = workPiece(
    withSteps(pattern, pattern.steps.with(1, { kind: 'chart', chart: 'Chart', times: 1 })),
  )
  expect(chartWork(once, 1)?.run).toBe(once.steps[1]?.rows)
})

test('in the round, and on a whole rake, rows are of no part of the pegs; to and fro over an opening they are', () => {
  const isPart = (shape: 'ring' | 'bar', ...steps: Step[]) => {
    const pattern = newPattern(6, 2)
    const piece = workPiece(
      withSteps({ ...pattern, loom: { ...pattern.loom, shape } }, [
        { kind: 'cast on', how: 'e-wrap', pegs: null },
        ...steps,
        { kind: 'chart', chart: 'Chart', times: 1 },
      ]),
    )
    return piece.steps.at(-1)?.rows?.rows.map(({ row, heading }) => [row.isPart, heading])
  }
  const forward = [false, 'forward']
  expect(isPart('ring')).toEqual([forward, forward])
  expect(isPart('bar')).toEqual([forward, [false, 'back']])
  expect(isPart('ring', { kind: 'pegs', run: null, toAndFro: true })).toEqual([
    [true, 'forward'],
    [true, 'back'],
  ])
  expect(isPart('bar', { kind: 'pegs', run: { from: 0, to: 3 }, toAndFro: true })).toEqual([
    [true, 'forward'],
    [true, 'back'],
  ])
})

test('rows to and fro that end at the opening of a ring keep their step as they were', () => {
  const open: Step = { kind: 'pegs', run: null, toAndFro: true }
  const chart: Step = { kind: 'chart', chart: 'Chart', times: 1 }
  const pattern = withSteps(newPattern(6, 3), [
    { kind: 'cast on', how: 'e-wrap', pegs: null },
    open,
    chart,
    { kind: 'note', text: 'Count.' },
  ])
  const piece = workPiece(pattern)
  expect(piece.steps.map(({ after }) => after.yarn.gap)).toEqual([0, 0, 6, 6])
  const again = workPiece({ ...pattern, title: 'Cuff' }, piece)
  expect(again.steps.map((step, at) => step === piece.steps[at])).toEqual([true, true, true, true])
  const other = workPiece(withSteps(pattern, pattern.steps.with(2, { ...chart, times: 2 })), piece)
  expect(other.steps.map(({ after }) => after.yarn.gap)).toEqual([0, 0, 0, 0])
})
