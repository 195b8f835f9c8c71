import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import { pegsInWork } from '../../../src/loom/state'
import { makeShortRows } from '../../../src/pattern/generate/shortRows'
import { mostTurns, usualHeel, usualTurns } from '../../../src/pattern/generate/wish'
import { type ShortRowWish } from '../../../src/pattern/pattern'
import { limits, type Row } from '../../../src/pattern/pattern'
import { starterCharts } from '../../../src/shelf/seeds'
import { isClosed, rulesThatFind, turnKinds, workSection } from './sections'
import { stitchOf } from '../../../src/stitches/vocabulary'

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

test('the usual heel can be worked on every loom of 6 pegs or more', () => {
  for (let pegs = 3; pegs <= 400; pegs++) {
    const heel = usualHeel({ pegs, shape: 'ring' })
    const made = makeShortRows({ pegs, shape: 'ring' }, heel)
    // Half of fewer pegs leaves no peg between two turned ones.
    expect([pegs, made.ok]).toEqual([pegs, pegs >= 6])
  }
})

test.each(turnKinds)('there is nothing to remark on the usual heel by %s', (turn) => {
  for (let pegs = 10; pegs <= limits.pegs.most; pegs += pegs < 40 ? 1 : 24)
    for (const direction of ['clockwise', 'counterclockwise'] as const) {
      const heel = { ...usualHeel({ pegs, shape: 'ring' }), turn }
      const work = workSection(heel, { pegs, shape: 'ring', direction })
      expect([pegs, rulesThatFind(work), isClosed(work)]).toEqual([
        pegs,
        { faults: [], hints: [] },
        true,
      ])
    }
})

test('as many rows are made as a chart can have, and no more', () => {
  const rowsOf = (change: Partial<ShortRowWish>) => {
    const run = { from: 0, to: 399 }
    const wish = { ...usualHeel({ pegs: 400, shape: 'bar' }), run, closeCorners: false, ...change }
    const made = makeShortRows({ pegs: 400, shape: 'bar' }, wish, stitchOf('k'), 0)
    return made.ok ? made.rows.length : `${made.message} ${made.advice}`
  }
  const most = limits.rows.most
  expect(rowsOf({ turned: 150 })).toBe(most)
  expect(rowsOf({ turned: 151 })).toBe(
    '151 turned pegs at each side make about 604 rows; a chart can have 600. Turn fewer pegs, or step by more.',
  )
  expect(rowsOf({ shape: 'wedge', turned: 199 })).toBe(400)
  expect(rowsOf({ shape: 'wedge', sides: 'last', turned: 299 })).toBe(most)
  expect(rowsOf({ shape: 'wedge', sides: 'first', turned: 299 })).toBe(most)
  expect(rowsOf({ sides: 'first', turned: 150 })).toBe(most)
  const inside = { from: 1, to: 398 }
  expect(rowsOf({ run: inside, closeCorners: true, turned: 149 })).toBe(most - 2)
  expect(rowsOf({ run: inside, closeCorners: true, turned: 150 })).toMatch(/^150 turned pegs/)
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
      'The heel runs from peg 31 to peg 45, but the loom has 40 pegs. Choose pegs from 1 to 40.',
    ],
    [
      'too many turns',
      { turned: 12 },
      '12 turned pegs at each side, 1 peg apart, do not fit on 20 pegs: at least one peg in the middle must stay without a turn. Turn at most 9 pegs at each side, or choose more pegs.',
    ],
    [
      'too wide a step',
      { step: 5, turned: 3 },
      '3 turned pegs at each side, 5 pegs apart, do not fit on 20 pegs: at least one peg in the middle must stay without a turn. Turn at most 2 pegs at each side, or choose more pegs.',
    ],
    [
      'half a turned peg',
      { turned: 2.5 },
      '2.5 pegs cannot be turned. Enter a whole number of turned pegs, 1 or more.',
    ],
    [
      'turned pegs that are no number',
      { turned: NaN },
      'The number of turned pegs is missing. Enter a whole number of turned pegs, 1 or more.',
    ],
    [
      'half a peg to step by',
      { step: 1.5 },
      'From turn to turn there cannot be 1.5 pegs. Enter a whole number of pegs from turn to turn, 1 or more.',
    ],
    [
      'a step that is no number',
      { step: Infinity },
      'How many pegs there are from turn to turn is missing. Enter a whole number of pegs from turn to turn, 1 or more.',
    ],
    [
      'half a peg to begin on',
      { run: { from: 0.5, to: 19 } },
      'There is no peg 1.5. Enter the first and the last peg as whole numbers.',
    ],
    [
      'no peg to end on',
      { run: { from: 0, to: NaN } },
      'The last peg is missing. Enter the first and the last peg as whole numbers.',
    ],
    ['no turn', { turned: 0 }, 'A heel turns at least one peg. Enter 1 or more.'],
    [
      'no step to the only turn',
      { step: 0, turned: 1 },
      'From turn to turn there is at least one peg. Enter 1 or more.',
    ],
    ['no step', { step: 0 }, 'From turn to turn there is at least one peg. Enter 1 or more.'],
    [
      'ends that changed places',
      { run: { from: 19, to: 3 } },
      'The first peg, 20, comes after the last, 4. Enter the lower number as the first peg.',
    ],
    [
      'one side of a ring',
      { sides: 'last' },
      'In the round there is no edge to turn back at: a heel turns at both ends. Turn at both ends, or work it on a rake.',
    ],
    [
      'both corners on one peg',
      { run: { from: 0, to: 38 } },
      'The heel lies on 39 of 40 pegs: both corners would be closed on the same peg. Choose fewer pegs, or leave the corners open.',
    ],
  ])('%s', (_, change, reason) => {
    expect(reasonOf(change)).toBe(reason)
  })

  test.each<[what: string, change: Partial<ShortRowWish>, reason: string]>([
    [
      'no peg to begin on',
      { run: { from: NaN, to: 19 } },
      'The first peg is missing. Enter the first and the last peg as whole numbers.',
    ],
    [
      'half a peg to end on',
      { run: { from: 0, to: 19.5 } },
      'There is no peg 20.5. Enter the first and the last peg as whole numbers.',
    ],
    [
      'before the loom',
      { run: { from: -1, to: 5 } },
      'The heel runs from peg 0 to peg 6, but the loom has 40 pegs. Choose pegs from 1 to 40.',
    ],
    [
      'one peg after the loom',
      { run: { from: 21, to: 40 } },
      'The heel runs from peg 22 to peg 41, but the loom has 40 pegs. Choose pegs from 1 to 40.',
    ],
    ['to the last peg of the loom', { run: { from: 20, to: 39 }, closeCorners: false }, 'worked'],
    [
      'on too few pegs',
      { run: { from: 3, to: 4 }, turned: 1 },
      '1 turned peg at each side, 1 peg apart, do not fit on 2 pegs: at least one peg in the middle must stay without a turn. Choose at least 3 pegs.',
    ],
    ['on the fewest pegs', { run: { from: 3, to: 5 }, turned: 1 }, 'worked'],
    ['with two pegs beside it', { run: { from: 1, to: 38 } }, 'worked'],
  ])('%s', (_, change, reason) => {
    expect(reasonOf(change)).toBe(reason)
  })

  test.each<[what: string, change: Partial<ShortRowWish>, reason: string]>([
    [
      'a corner beyond the last peg',
      { run: { from: 20, to: 39 } },
      'The heel ends on peg 40: there is no peg past that end to close the corner on. Leave one peg free at each side, or leave the corners open.',
    ],
    ['no corner to close', { run: { from: 0, to: 19 }, closeCorners: false }, 'worked'],
    [
      'the first peg, away from the far edge',
      { sides: 'first', run: { from: 3, to: 20 } },
      'A heel that turns only at its first peg must reach the other edge of the rake; it runs from peg 4 to peg 21 of 40. End it on peg 40.',
    ],
    ['the first peg, up to the far edge', { sides: 'first', run: { from: 3, to: 39 } }, 'worked'],
    ['the last peg, from the near edge', { sides: 'last', run: { from: 0, to: 20 } }, 'worked'],
    [
      'the last peg, too often',
      { sides: 'last', run: { from: 0, to: 9 }, turned: 10 },
      '10 turned pegs at one side, 1 peg apart, do not fit on 10 pegs: at least one peg must stay without a turn. Turn at most 9 pegs at one side, or choose more pegs.',
    ],
    [
      'one side with rows beyond a chart',
      { shape: 'wedge', sides: 'both', run: { from: 0, to: 39 }, turned: 19 },
      'worked',
    ],
  ])('on a rake: %s', (_, change, reason) => {
    expect(reasonOf(change, 'bar')).toBe(reason)
  })

  test('a corner beyond the edge of a bar', () => {
    expect(reasonOf({ run: { from: 0, to: 19 } }, 'bar')).toBe(
      'The heel begins on peg 1: there is no peg past that end to close the corner on. Leave one peg free at each side, or leave the corners open.',
    )
  })

  test('one side of a bar that does not reach its edge', () => {
    expect(reasonOf({ sides: 'last', run: { from: 3, to: 20 } }, 'bar')).toBe(
      'A heel that turns only at its last peg must reach the other edge of the rake; it runs from peg 4 to peg 21 of 40. Begin it on peg 1.',
    )
  })
})

test('the starter chart of a heel is the heel this makes for its loom', () => {
  const heel = starterCharts.find(({ id }) => id === 'hundred-steps-heel')?.pattern()
  const made = makeShortRows({ pegs: 40, shape: 'ring' }, usualHeel({ pegs: 40, shape: 'ring' }))
  const shape = ({ run, end }: Row) => ({ run, end })
  // Rows 2 to 29 of the chart; its first row and its last two are of rib.
  expect(made.ok && made.rows.slice(0, -2).map(shape)).toEqual(
    heel && chartOn(heel).rows.slice(1, 29).map(shape),
  )
})

test('all pegs are in work again after a heel', () => {
  expect(
    pegsInWork(workSection(usualHeel({ pegs: 40, shape: 'ring' }), { pegs: 40 }).run.end),
  ).toBe(40)
})

test.each([
  [3, 1, 1],
  [9, 1, 3],
  [10, 1, 3],
  [11, 1, 4],
  [12, 2, 2],
  [20, 5, 1],
])('on %i pegs, %i apart, a third of them are %i turned at each side', (pegs, step, turned) => {
  expect(usualTurns({ from: 4, to: 3 + pegs }, step)).toBe(turned)
})

test.each([
  [1, 1, 'both', 0],
  [2, 1, 'both', 0],
  [3, 1, 'both', 1],
  [4, 1, 'both', 1],
  [5, 1, 'both', 2],
  [7, 2, 'both', 2],
  [2, 1, 'last', 1],
  [7, 2, 'first', 3],
  [8, 3, 'last', 3],
] as const)('on %i pegs, %i apart, at %s: %i turns at most', (pegs, step, sides, most) => {
  expect(mostTurns({ from: 2, to: 1 + pegs }, step, sides)).toBe(most)
})
