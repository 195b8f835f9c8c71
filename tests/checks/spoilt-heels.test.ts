import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkPattern } from '../../src/checks/check'
import { noRow, newPattern, type Pattern, type Row } from '../../src/pattern/pattern'
import { makeShortRows } from '../../src/pattern/generate/shortRows'
import type { ShortRowWish } from '../../src/pattern/generate/wish'
import { workPattern } from '../../src/pattern/work'

const pegs = 40
const kinds = ['German turn', 'wrap'] as const
type Kind = (typeof kinds)[number]

/** Pegs that are turned on, row by row: forward, back, forward, ... */
type Turns = readonly number[]

const wishOf = (turn: Kind, length: number, turned: number): ShortRowWish => ({
  shape: 'heel',
  turn,
  run: { from: 2, to: 1 + length },
  turned,
  step: 1,
  sides: 'both',
  closeCorners: true,
})

/** Where the generated heel turns, read off its own rows. */
function turnsOf(wish: ShortRowWish): Turns {
  const made = makeShortRows({ pegs, shape: 'ring' }, wish)
  if (!made.ok) throw new Error(made.message)
  const beyond = wish.turn === 'wrap' ? 1 : 0
  return made.rows.flatMap(({ run, end }, index) =>
    end === 'on' || !run ? [] : [index % 2 === 0 ? run.to + beyond : run.from - beyond],
  )
}

/** Rows that turn on these pegs, each from where the one before turned; then to the end, and round. */
function heelOf(kind: Kind, turns: Turns, closing = true): Pattern {
  const beyond = kind === 'wrap' ? 1 : 0
  let next = 0
  const rows = turns.map((peg, index): Row => {
    const forward = index % 2 === 0
    const last = forward ? peg - beyond : peg + beyond
    const run = { from: Math.min(next, last), to: Math.max(next, last) }
    next = forward ? peg - 1 : peg + 1
    return { ...noRow(pegs, 'k'), run, end: kind }
  })
  const out: Row = { ...noRow(pegs, 'k'), run: { from: next, to: pegs - 1 } }
  const pattern = newPattern(pegs)
  return {
    ...pattern,
    chart: { ...pattern.chart, rows: closing ? [...rows, out, noRow(pegs, 'k')] : rows },
  }
}

const rulesOf = (pattern: Pattern): string[] =>
  checkPattern(workPattern(pattern)).findings.flatMap(({ rule, severity }) =>
    severity === 'hint' ? [] : [rule],
  )

const heels = fc
  .record({ length: fc.integer({ min: 12, max: 30 }), turned: fc.integer({ min: 3, max: 5 }) })
  .chain(({ length, turned }) =>
    fc.record({
      length: fc.constant(length),
      turned: fc.constant(turned),
      // A narrowing row that is neither the first nor the last of its side (to turn outside after
      // the last one is to widen), and any widening one.
      narrowing: fc.integer({ min: 2, max: 2 * turned - 3 }),
      widening: fc.integer({ min: 2 * turned, max: 4 * turned - 3 }),
    }),
  )

/** The heel as generated is in order; spoilt, the rule meant for that finds it. */
const caught = (
  kind: Kind,
  rule: string,
  spoil: (turns: Turns, at: { narrowing: number; widening: number }) => Pattern,
) => {
  fc.assert(
    fc.property(heels, ({ length, turned, ...at }) => {
      const turns = turnsOf(wishOf(kind, length, turned))
      expect(rulesOf(heelOf(kind, turns))).toEqual([])
      expect(rulesOf(spoil(turns, at))).toContain(rule)
    }),
    { numRuns: 40 },
  )
}

const inward = (row: number): number => (row % 2 === 0 ? -1 : 1)

describe.each(kinds)('a heel by %s that is spoilt', (kind) => {
  test('a turn repeated on the peg of the last one on its side', () => {
    // A German turn works that peg first, so it is a turn that does not step inward.
    caught(kind, kind === 'wrap' ? 'turn-twice' : 'turn-inside', (turns, { narrowing }) =>
      heelOf(kind, turns.with(narrowing, turns[narrowing - 2] ?? 0)),
    )
  })

  test('a turn outside the last one on its side', () => {
    caught(kind, 'turn-inside', (turns, { narrowing }) =>
      heelOf(kind, turns.with(narrowing, (turns[narrowing - 2] ?? 0) - inward(narrowing))),
    )
  })

  test('a turn skipped: work goes on where it should go back', () => {
    caught(kind, 'turn-start', (turns, { narrowing }) => {
      const pattern = heelOf(kind, turns)
      const row = pattern.chart.rows[narrowing] as Row
      const rows = pattern.chart.rows.with(narrowing, { ...row, end: 'on' })
      return { ...pattern, chart: { ...pattern.chart, rows } }
    })
  })

  test('a widening row that stops short of the nearest turned peg', () => {
    caught(kind, 'turn-nearest', (turns, { widening }) => {
      const short = (turns[widening] ?? 0) + 2 * inward(widening)
      return heelOf(kind, turns.with(widening, short))
    })
  })

  test('strands that are never worked off', () => {
    caught(kind, 'turn-left', (turns) => heelOf(kind, turns, false))
  })
})
