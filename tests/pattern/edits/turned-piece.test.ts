import { withChart } from '../../../src/pattern/edits/chart'
import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPattern } from '../../../src/checks/check'
import { checkPiece } from '../../../src/checks/piece/check'
import { bindOffs, castOns } from '../../../src/loom/move'
import { mirror } from '../../../src/pattern/edits/mirror'
import { addChart } from '../../../src/pattern/edits/piece'
import { reverseDirection, whyNotReversed } from '../../../src/pattern/edits/turn-round'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { mostTurns, usualHeel } from '../../../src/pattern/generate/wish'
import { type ShortRowWish } from '../../../src/pattern/pattern'
import {
  newPattern,
  blankRow,
  type Pattern,
  type Row,
  type Run,
} from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { chartsInOrder, onChart, chartOn } from '../../../src/pattern/charts'
import { workPattern } from '../../../src/pattern/work'
import { loopsLeft, workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { cellsFrom } from '../../cells'

const castOn = { kind: 'cast on', how: 'e-wrap', pegs: null } as const
const bindOff = (pegs: Run | null = null): Step => ({ kind: 'bind off', how: 'basic', pegs })
const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
const chart = (name: string, times = 1): Step => ({ kind: 'chart', chart: name, times })
const inWork = (run: Run | null): Step => ({ kind: 'pegs', run, toAndFro: run !== null })

const loom = (shape: 'ring' | 'bar', pegs: number): Pattern => {
  const pattern = newPattern(pegs, 2)
  return { ...pattern, loom: { ...pattern.loom, shape } }
}
const worked = (pattern: Pattern, ...steps: Step[]): Pattern => ({
  ...pattern,
  steps,
})
function withHeel(pattern: Pattern, wish: ShortRowWish, stitch = 'k'): Pattern {
  const made = shortRowChart(pattern.loom, wish, stitchOf(stitch))
  if (!made.ok) throw new Error(made.message)
  return addChart(pattern, 'Heel', made.chart)
}

/** Rules of the errors in the piece and in each of its charts. */
const errorsIn = (pattern: Pattern): string[] =>
  [
    ...checkPiece(workPiece(pattern)),
    ...chartsInOrder(pattern).flatMap(
      ({ name }) => checkPattern(workPattern(onChart(pattern, name))).findings,
    ),
  ].flatMap(({ severity, rule }) => (severity === 'error' ? [rule] : []))

/** How many stitches are worked on each place, from left to right. */
function onEachPlace(pattern: Pattern): number[] {
  const counts = new Array<number>(pattern.loom.pegs).fill(0)
  for (const { rows } of workPiece(pattern).steps)
    for (const { row } of rows?.rows ?? [])
      for (let peg = row.from; peg <= row.to; peg++) counts[peg] = (counts[peg] ?? 0) + 1
  return pattern.loom.direction === 'clockwise' ? counts.reverse() : counts
}

const turns = [
  ['reversed', reverseDirection],
  ['mirrored', mirror],
] as const

const half = { from: 0, to: 9 }
const wedge: ShortRowWish = {
  shape: 'wedge',
  turn: 'wrap',
  run: { from: 0, to: 39 },
  turned: 4,
  step: 5,
  sides: 'last',
  closeCorners: false,
  beside: null,
}

describe.each(turns)('%s, a piece can still be worked:', (_name, turn) => {
  const bar = loom('bar', 40)
  const ring = loom('ring', 20)
  const heel = usualHeel(bar.loom)
  test.each([
    ['a shoulder on a bar', worked(withHeel(bar, wedge), castOn, chart('Heel'), bindOff())],
    ['a heel on a bar', worked(withHeel(bar, heel), castOn, knit(4), chart('Heel'), bindOff())],
    ['half a ring to and fro', worked(ring, castOn, inWork(half), knit(4), bindOff())],
    [
      'half a ring, then the whole of it',
      worked(ring, castOn, inWork(half), knit(4), inWork(null), knit(2), bindOff()),
    ],
  ])('%s', (_what, piece) => {
    expect(errorsIn(piece)).toEqual([])
    expect(turn(piece)).not.toBe(piece)
    expect(errorsIn(turn(piece))).toEqual([])
    expect(turn(turn(piece))).toEqual(piece)
  })
})

test('on a bar the mirror image is begun at the other end: the same pegs, worked the other way', () => {
  const first = worked(withHeel(loom('bar', 40), wedge), castOn, chart('Heel'), bindOff())
  const second = mirror(first)
  expect(second.loom.direction).toBe('counterclockwise')
  expect(second.steps).toEqual(first.steps)
  expect(second.charts).toEqual(first.charts)
  expect(onEachPlace(second)).toEqual(onEachPlace(first).reverse())
})

test('reversed, the shoulder at the last peg of a bar lies at the first, after a whole row', () => {
  const first = withHeel(loom('bar', 40), wedge)
  const rows = (pattern: Pattern) => chartOn(onChart(pattern, 'Heel')).rows.map(({ run }) => run)
  const made = shortRowChart(first.loom, { ...wedge, sides: 'first' })
  expect(made.ok && rows(reverseDirection(first))).toEqual(
    made.ok && made.chart.rows.map(({ run }) => run),
  )
})

test('half a bar is not reversed: the yarn is at its other end, and that is said', () => {
  const piece = worked(loom('bar', 20), castOn, knit(2), inWork(half), knit(4), bindOff())
  expect(reverseDirection(piece)).toBe(piece)
  expect(whyNotReversed(piece)).toBe(
    'Begun at the other end of the rake, this piece cannot have the same fabric: step 4 (plain rows) would not begin where the yarn is.',
  )
  expect(errorsIn(mirror(piece))).toEqual([])
})

test('where turning cannot be judged since a step cannot be worked, that is said', () => {
  const ring = loom('ring', 20)
  const row: Row = {
    ...blankRow(20, stitchOf('k')),
    run: { from: 0, to: 0 },
    heading: 'forward',
    end: 'wrap',
  }
  const turning = withChart(ring, { rows: [row] })
  const piece = worked(turning, castOn, chart('Chart', 2), bindOff())
  expect(whyNotReversed(piece)).toBe(
    'Step 2 (Chart) cannot be worked as it is: mend that first, then the piece can be turned.',
  )
  expect(mirror(mirror(piece))).toEqual(piece)
})

describe('on a ring, a heel', () => {
  const usual = usualHeel({ shape: 'ring', pegs: 8 })
  const warned = (pattern: Pattern) =>
    checkPattern(workPattern(pattern)).findings.filter(({ severity }) => severity !== 'hint')
  const alone = (pegs: number, wish: Partial<ShortRowWish>): Pattern => {
    const pattern = withHeel(newPattern(pegs, 2), { ...usual, turned: 2, ...wish })
    return onChart(pattern, 'Heel')
  }
  const whole = alone(6, { run: { from: 0, to: 5 }, closeCorners: false })
  const wrapped = alone(8, { run: { from: 0, to: 5 }, turn: 'wrap', closeCorners: true })
  const overJoin = alone(8, { run: { from: 0, to: 5 }, closeCorners: true })

  test.each(turns)('whose first or last row is a whole one is placed: %s', (_name, turn) => {
    for (const heel of [whole, wrapped]) {
      expect(warned(turn(heel))).toEqual([])
      expect(chartOn(turn(heel)).rows.every(({ heading }) => heading === null)).toBe(true)
      expect(turn(turn(heel))).toEqual(heel)
    }
  })

  test('with a turn beyond the join is begun at the other side in the mirror image', () => {
    expect(mirror(overJoin).loom.direction).toBe('counterclockwise')
    expect(warned(mirror(overJoin))).toEqual([])
    expect(mirror(mirror(overJoin))).toEqual(overJoin)
  })

  test('with a turn beyond the join is worked from the other side when reversed', () => {
    const found = warned(reverseDirection(overJoin))
    expect(found.every(({ rule }) => rule === 'turn-way')).toBe(true)
    expect(reverseDirection(reverseDirection(overJoin))).toEqual(overJoin)
  })
})

describe('laws', () => {
  const textured = (pegs: number): Arbitrary<Row[]> =>
    fc.array(
      fc
        .array(fc.constantFrom('k', 'p'), { minLength: pegs, maxLength: pegs })
        .map((cells): Row => ({ ...blankRow(pegs, stitchOf('k')), cells: cellsFrom(cells) })),
      { minLength: 2, maxLength: 2 },
    )

  const arbitraryWish = (shape: 'ring' | 'bar', pegs: number): Arbitrary<ShortRowWish> =>
    fc
      .record({
        shape: fc.constantFrom('heel', 'wedge'),
        turn: fc.constantFrom('German turn', 'wrap'),
        sides: shape === 'ring' ? fc.constant('both') : fc.constantFrom('both', 'first', 'last'),
        step: fc.integer({ min: 1, max: 3 }),
        closeCorners: fc.boolean(),
        beside: fc.constant(null),
        ends: fc.tuple(fc.nat(4), fc.nat(4)),
        share: fc.double({ min: 0, max: 0.99, noNaN: true }),
      })
      .map(({ ends: [before, after], share, ...wish }) => {
        const run = {
          from: wish.sides === 'last' ? 0 : before,
          to: pegs - 1 - (wish.sides === 'first' ? 0 : after),
        }
        const most = mostTurns(run, wish.step, wish.sides)
        return { ...wish, run, turned: 1 + Math.floor(share * most) }
      })

  /** Steps in which pegs are in work to and fro, some of them bound off. */
  const arbitraryPart = (pegs: number): Arbitrary<Step[]> =>
    fc
      .record({
        cut: fc.integer({ min: 1, max: pegs - 1 }),
        low: fc.boolean(),
        rows: fc.integer({ min: 1, max: 4 }),
        again: fc.constantFrom('round', 'bound off', 'rest'),
      })
      .map(({ cut, low, rows, again }) => {
        const runs = [
          { from: 0, to: cut - 1 },
          { from: cut, to: pegs - 1 },
        ] as const
        const [run, rest] = low ? runs : [runs[1], runs[0]]
        const part = [inWork(run), knit(rows)]
        if (again === 'round') return [...part, inWork(null), knit(2)]
        return [...part, bindOff(run), ...(again === 'rest' ? [inWork(rest), knit(2)] : [])]
      })

  const arbitraryPieceOf = (shape: 'ring' | 'bar', pegs: number): Arbitrary<Pattern | null> =>
    fc
      .record({
        rows: textured(pegs),
        wish: arbitraryWish(shape, pegs),
        stitch: fc.constantFrom('k', 'p'),
        steps: fc.array(
          fc.constantFrom(chart('Leg', 2), chart('Heel'), chart('Mixed'), knit(2), knit(3)),
          { minLength: 1, maxLength: 3 },
        ),
        part: fc.oneof(fc.constant<Step[]>([]), arbitraryPart(pegs)),
        how: fc.tuple(fc.constantFrom(...castOns), fc.constantFrom(...bindOffs)),
        direction: fc.constantFrom('clockwise', 'counterclockwise'),
      })
      .map(({ rows, wish, stitch, steps, part, how: [first, last], direction }) => {
        const empty = loom(shape, pegs)
        const heel = shortRowChart(empty.loom, wish, stitchOf(stitch))
        if (!heel.ok) return null
        const leg = { ...chartOn(empty), rows }
        const mixed = { ...leg, rows: [...rows, ...heel.chart.rows, ...rows] }
        const sections = addChart(
          addChart(addChart(empty, 'Leg', leg), 'Heel', heel.chart),
          'Mixed',
          mixed,
        )
        return worked(
          { ...sections, loom: { ...empty.loom, direction } },
          { ...castOn, how: first },
          ...steps,
          ...part,
          { kind: 'bind off', how: last, pegs: null },
        )
      })

  const arbitraryPiece = fc
    .tuple(fc.constantFrom('ring', 'bar'), fc.integer({ min: 12, max: 18 }))
    .chain(([shape, pegs]) => arbitraryPieceOf(shape, pegs))

  test.each(turns)('a piece that can be worked can be worked when it is %s', (name, turn) => {
    let tried = 0
    fc.assert(
      fc.property(arbitraryPiece, (piece) => {
        if (!piece || errorsIn(piece).length > 0) return
        const turned = turn(piece)
        if (turned === piece) {
          expect(name).toBe('reversed')
          expect(whyNotReversed(piece)).not.toBeNull()
          return
        }
        tried++
        expect(errorsIn(turned)).toEqual([])
        expect(loopsLeft(workPiece(turned))).toBe(0)
        expect(turn(turned)).toEqual(piece)
        const places = onEachPlace(piece)
        expect(onEachPlace(turned)).toEqual(name === 'reversed' ? places : places.reverse())
      }),
      { numRuns: 150 },
    )
    expect(tried).toBeGreaterThan(20)
  })
})
