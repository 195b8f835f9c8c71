import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPattern } from '../../../src/checks/check'
import { pegsInWork } from '../../../src/loom/state'
import { makeShortRows, shortRowChart } from '../../../src/pattern/generate/shortRows'
import {
  mostTurns,
  usualHeel,
  usualTurns,
  type ShortRowWish,
} from '../../../src/pattern/generate/wish'
import { newPattern, type Pattern, type Row } from '../../../src/pattern/pattern'
import { starterCharts } from '../../../src/shelf/seeds'
import { workPattern } from '../../../src/pattern/work'

const turns = ['German turn', 'wrap'] as const

/** A pattern of nothing but the section. */
function patternOf(pegs: number, wish: ShortRowWish, shape: 'ring' | 'bar' = 'ring'): Pattern {
  const empty = newPattern(pegs)
  const made = shortRowChart({ pegs, shape }, wish)
  if (!made.ok) throw new Error(made.message)
  return { ...empty, loom: { ...empty.loom, shape }, chart: made.chart }
}

/** Rules that found an error or a warning. */
const faultsOf = (pattern: Pattern): string[] =>
  checkPattern(workPattern(pattern)).findings.flatMap(({ rule, severity, message }) =>
    severity === 'hint' ? [] : [`${rule}: ${message}`],
  )

const isClosed = (pattern: Pattern): boolean =>
  workPattern(pattern).run.end.stacks.every(({ length }) => length === 1)

describe('laws', () => {
  for (const turn of turns)
    for (const shape of ['heel', 'wedge'] as const)
      test(`${shape} by ${turn}: every run of 6 to 200 pegs and every step can be worked and leaves one loop on each peg`, () => {
        // Every run once with its usual turns; steps, places and fewer turns at random.
        for (let pegs = 6; pegs <= 200; pegs++) {
          const run = { from: 1, to: pegs }
          const loom = pegs + 4
          const wish: ShortRowWish = {
            shape,
            turn,
            run,
            turned: usualTurns(run),
            step: 1,
            sides: 'both',
            closeCorners: true,
          }
          const pattern = patternOf(loom, wish)
          expect([
            pegs,
            isClosed(pattern),
            workPattern(pattern).run.rows.flatMap(({ faults }) => faults),
          ]).toEqual([pegs, true, []])
        }
        fc.assert(
          fc.property(
            fc.integer({ min: 6, max: 60 }),
            fc.nat(5),
            fc.nat(5),
            fc.nat(1000),
            fc.nat(1000),
            fc.boolean(),
            fc.constantFrom('ring' as const, 'bar' as const),
            (length, before, after, stepPick, turnPick, corners, loomShape) => {
              const run = { from: before, to: before + length - 1 }
              const step = 1 + (stepPick % (length - 2))
              const turned = 1 + (turnPick % mostTurns(run, step, 'both'))
              const closeCorners =
                corners && (loomShape === 'ring' ? before + after > 1 : before > 0 && after > 0)
              const wish = { shape, turn, run, step, turned, closeCorners, sides: 'both' as const }
              const pattern = patternOf(before + length + after, wish, loomShape)
              expect(faultsOf(pattern)).toEqual([])
              expect(isClosed(pattern)).toBe(true)
            },
          ),
          { numRuns: 120 },
        )
      }, 60_000)

  test('one-sided wedges and heels at an edge of a bar', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 60 }),
        fc.nat(5),
        fc.nat(1000),
        fc.nat(1000),
        fc.constantFrom(...turns),
        fc.constantFrom('heel' as const, 'wedge' as const),
        fc.constantFrom('first' as const, 'last' as const),
        (length, beside, stepPick, turnPick, turn, shape, sides) => {
          const pegs = length + beside
          const run =
            sides === 'last' ? { from: 0, to: length - 1 } : { from: beside, to: pegs - 1 }
          const step = 1 + (stepPick % (length - 1))
          const turned = 1 + (turnPick % mostTurns(run, step, sides))
          const wish = { shape, turn, run, step, turned, sides, closeCorners: false }
          const pattern = patternOf(pegs, wish, 'bar')
          expect(faultsOf(pattern)).toEqual([])
          expect(isClosed(pattern)).toBe(true)
          expect(workPattern(pattern).run.end).toMatchObject({
            yarn: { gap: 0 },
            heading: 'forward',
          })
        },
      ),
      { numRuns: 120 },
    )
  })
})

test('a wrapped heel has twice its turned pegs in rows out, and two fewer back (common practice)', () => {
  for (const pegs of [24, 32, 36, 40, 48, 56]) {
    const wish: ShortRowWish = {
      ...usualHeel({ pegs, shape: 'ring' }),
      turn: 'wrap',
      closeCorners: false,
    }
    const made = makeShortRows({ pegs, shape: 'ring' }, wish)
    const turning = made.ok ? made.rows.filter(({ end }) => end === 'wrap').length : 0
    expect(turning).toBe(2 * wish.turned + (2 * wish.turned - 2))
  }
})

// 24 to 48 pegs: common practice. 56 pegs: a published loom heel, half the pegs, 9 + 10 + 9.
test.each([
  [24, 4],
  [32, 5],
  [36, 6],
  [40, 7],
  [48, 8],
  [56, 9],
])('a heel for %i pegs turns %i pegs at each side', (pegs, turned) => {
  const heel = usualHeel({ pegs, shape: 'ring' })
  expect(heel.run.to - heel.run.from + 1).toBe(pegs / 2)
  expect(heel.turned).toBe(turned)
  const made = makeShortRows({ pegs, shape: 'ring' }, heel)
  expect(made).toMatchObject({ ok: true, neverTurned: pegs / 2 - 2 * turned })
})

test('the usual heel can be worked on every loom', () => {
  for (let pegs = 3; pegs <= 400; pegs++) {
    const heel = usualHeel({ pegs, shape: 'ring' })
    const made = makeShortRows({ pegs, shape: 'ring' }, heel)
    if (pegs < 6) continue
    expect([pegs, made.ok]).toEqual([pegs, true])
  }
})

describe('refused, with the numbers and what to do', () => {
  const heel = usualHeel({ pegs: 40, shape: 'ring' })
  const reasonOf = (change: Partial<ShortRowWish>, shape: 'ring' | 'bar' = 'ring') => {
    const made = makeShortRows({ pegs: 40, shape }, { ...heel, ...change })
    return made.ok ? 'worked' : `${made.message} ${made.advice}`
  }
  test.each<[what: string, change: Partial<ShortRowWish>, reason: string]>([
    [
      'off the loom',
      { run: { from: 30, to: 44 } },
      'The section runs from peg 31 to peg 45; the loom has pegs 1 to 40. Choose a first and a last peg on the loom.',
    ],
    [
      'too many turns',
      { turned: 12 },
      '12 turned pegs at each side, 1 peg apart, need more than the 20 pegs of the section: no peg would be left between them. Turn at most 9 pegs at each side, or choose more pegs.',
    ],
    [
      'too wide a step',
      { step: 5, turned: 3 },
      '3 turned pegs at each side, 5 pegs apart, need more than the 20 pegs of the section: no peg would be left between them. Turn at most 2 pegs at each side, or choose more pegs.',
    ],
    [
      'one side of a ring',
      { sides: 'last' },
      'In the round there is no edge to go back from: a section that turns at one side only would turn on the same peg again and again at the other. Turn at both sides, or work it on a bar.',
    ],
    [
      'both corners on one peg',
      { run: { from: 0, to: 38 } },
      'The section lies on 39 of 40 pegs, so both its corners would be turned on the same peg. Choose fewer pegs, or leave the corners open.',
    ],
  ])('%s', (_, change, reason) => {
    expect(reasonOf(change)).toBe(reason)
  })

  test('a corner beyond the edge of a bar', () => {
    expect(reasonOf({ run: { from: 0, to: 19 } }, 'bar')).toBe(
      'The section begins on peg 1, so its corner lies beyond the edge of the bar. Move it so that one peg is free on each side, or leave the corners open.',
    )
  })

  test('one side of a bar that does not reach its edge', () => {
    expect(reasonOf({ sides: 'last', run: { from: 3, to: 20 } }, 'bar')).toBe(
      'A section that turns at its last peg only must reach the other edge of the bar; it runs from peg 4 to peg 21 of 40. Begin it on peg 1.',
    )
  })
})

test('the starter chart of a heel is the heel this makes for its loom', () => {
  const heel = starterCharts.find(({ id }) => id === 'hundred-steps-heel')?.pattern()
  const made = makeShortRows({ pegs: 40, shape: 'ring' }, usualHeel({ pegs: 40, shape: 'ring' }))
  const shape = ({ run, end }: Row) => ({ run, end })
  // Rows 2 to 29 of the chart; its first row and its last two are of rib.
  expect(made.ok && made.rows.slice(0, -2).map(shape)).toEqual(
    heel?.chart.rows.slice(1, 29).map(shape),
  )
})

test('all pegs are in work again after a heel', () => {
  expect(
    pegsInWork(workPattern(patternOf(40, usualHeel({ pegs: 40, shape: 'ring' }))).run.end),
  ).toBe(40)
})
