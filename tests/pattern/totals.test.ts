/** What a small piece comes to, counted by hand. */
import { expect, test } from 'vitest'
import { addStep, changeStep, setPace, setSwatch } from '../../src/pattern/edits/piece'
import { setGauge, setMaking } from '../../src/pattern/edits/settings'
import { setEnd, setRun } from '../../src/pattern/edits/turning'
import type { Pattern } from '../../src/pattern/pattern'
import { totalsOf } from '../../src/pattern/totals'
import { workPiece } from '../../src/pattern/workPiece'
import type { Stitch } from '../../src/stitches/stitch'
import { standardVocabulary } from '../../src/stitches/vocabulary'
import { patternOf } from './edits/chart-text'

/** Six pegs in stitches of 5 x 4 mm: cast on, two rounds worked twice, a plain round, gathered. */
function smallPiece(): Pattern {
  const chart = patternOf('k p k2tog yo k k', 'k k k k k k')
  const flat = setMaking(setGauge(chart, { stitches: 20, rows: 25 }), { knit: 'flat' })
  const [, worked] = flat.steps
  if (worked?.kind !== 'chart') throw new Error('The second step works the chart.')
  const twice = changeStep(flat, 1, { ...worked, times: 2 })
  const knit = standardVocabulary.stitch('k')
  const longer = addStep(twice, 2, { kind: 'plain', stitch: knit, amount: { rows: 1 } })
  return changeStep(longer, 3, { kind: 'bind off', how: 'gather', pegs: null })
}

const byId = (counts: ReadonlyMap<Stitch, number>): [string, number][] =>
  [...counts].map(([{ id }, count]) => [id, count])

// Strand lengths as loom/length.ts reckons them, mm: a flat knit and a purl take two widths and two
// heights, a yarn over one and a half widths and a height, an e-wrap cast on three widths and a height.
const [knit, yarnOver, castOn] = [2 * 5 + 2 * 4, 1.5 * 5 + 4, 3 * 5 + 4]
// The loop of the decrease that is moved leans over to the next peg with both its legs (Pythagoras).
const lean = 2 * (Math.hypot(5, 4) - 4)
// The end is drawn through each loop, about twice round.
const gathered = 2 * 5

test('rows, stitches, loops, moves and yarn of each step and of the whole', () => {
  const { steps, whole } = totalsOf(workPiece(smallPiece()))
  expect(steps.map(({ rows }) => rows)).toEqual([0, 4, 1, 0])
  // In the first round the decrease is two moves, one loop put over and the knit, and all else is one.
  const chart = 2 * (3 + 1 + 2 + 1 + 6)
  expect(steps.map(({ moves }) => moves)).toEqual([6, chart, 6, 6])
  expect(steps.map(({ stitches }) => Object.fromEntries(byId(stitches)))).toEqual([
    {},
    { k: 18, p: 2, k2tog: 2, yo: 2 },
    { k: 6 },
    {},
  ])
  const rows = 2 * (5 * knit + lean + yarnOver + 6 * knit)
  const yarn = [6 * castOn, rows, 6 * knit, 6 * gathered]
  steps.forEach((step, at) => expect(step.yarn).toBeCloseTo(yarn[at] ?? NaN, 6))

  expect(whole.rows).toBe(5)
  expect(whole.moves).toBe(6 + chart + 6 + 6)
  expect(byId(whole.stitches)).toEqual([
    ['k', 24],
    ['p', 2],
    ['k2tog', 2],
    ['yo', 2],
  ])
  // Each of these leaves one loop.
  expect([...whole.loops]).toEqual([...whole.stitches])
  expect(whole.yarn).toBeCloseTo(6 * castOn + rows + 6 * knit + 6 * gathered, 6)
})

test('a cross leaves a loop on each of its pegs', () => {
  const { whole } = totalsOf(workPiece(patternOf('2/2_LC . . . yo k k2tog')))
  expect(Object.fromEntries(byId(whole.stitches))).toEqual({ '2/2 LC': 1, yo: 1, k: 1, k2tog: 1 })
  expect(Object.fromEntries(byId(whole.loops))).toEqual({ '2/2 LC': 4, yo: 1, k: 1, k2tog: 1 })
})

test('to turn is no move; to wrap the next peg is one', () => {
  const short = setRun(patternOf('k k k k k k'), 0, { from: 0, to: 3 })
  const movesOf = (pattern: Pattern) => totalsOf(workPiece(pattern)).steps[1]?.moves
  expect(movesOf(short)).toBe(4)
  expect(movesOf(setEnd(short, 0, 'wrap'))).toBe(4 + 1)
})

test('grams by the weighed swatch, and minutes by the pace', () => {
  // A hundred flat knits weigh 18 g: 0.01 g to each mm.
  const weighed = setSwatch(smallPiece(), { stitches: 10, rows: 10, grams: 18 })
  const { whole, steps } = totalsOf(workPiece(setPace(weighed, 11)))
  expect(whole.grams).toBeCloseTo((whole.yarn ?? NaN) / 100, 6)
  expect(whole.minutes).toBe((6 + 26 + 6 + 6) / 11)
  expect(steps[1]?.minutes).toBe(26 / 11)
})
