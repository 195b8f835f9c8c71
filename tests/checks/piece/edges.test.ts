/** Where edges begin, held against the yarn as the rows and moves before them leave it. */
import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { yarnReady } from '../../../src/checks/piece/yarn'
import { bindOffs } from '../../../src/loom/move'
import { addChart } from '../../../src/pattern/edits/piece'
import { momentsOf, pieceStretches } from '../../../src/pattern/stretches'
import { newPattern, type Pattern, type Run } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { habitsOf } from '../../../src/pattern/habits'
import { workPiece, type PieceWork, type StepWork } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'

/** The yarn hangs on one side of the peg that was worked last. */
interface Yarn {
  readonly peg: number
  readonly side: 1 | -1
  /** It comes from the end of a whole round. */
  readonly round?: true
}

const start: Yarn = { peg: 0, side: -1 }

const pegs = 12

/** The pegs that an edge works, in the order its moves come to them, once each. */
function orderOf(work: PieceWork, index: number): number[] {
  const stretch = pieceStretches(work).find(({ step }) => step === index)
  if (!stretch) return []
  const moves = momentsOf(stretch, habitsOf(work.pattern)).flatMap(({ move }) => move ?? [])
  const done = moves.flatMap((move) =>
    move.do === 'work' || move.do === 'cast on' || move.do === 'let go' ? [move.peg] : [],
  )
  return [...new Set(done)]
}

function after(yarn: Yarn, work: PieceWork, index: number): Yarn {
  const { step, rows, edge, toAndFro, pegs: inWork } = work.steps[index] as StepWork
  const { shape } = work.pattern.loom
  if (step.kind === 'cast on' && edge?.way.pegs.length === pegs)
    return shape === 'bar' || toAndFro ? start : { peg: pegs - 1, side: 1, round: true }
  if (edge) {
    const order = orderOf(work, index)
    // The last two loops of a graft are sewn to one another, on either side of the yarn.
    const pairs = step.kind === 'bind off' && step.how === 'graft' && order.length % 2 === 0
    const peg = order.at(pairs ? -2 : -1)
    if (peg === undefined || edge.newEnd) return yarn
    return { peg, side: edge.way.heading === 'forward' ? 1 : -1 }
  }
  const last = rows?.rows.at(-1)
  if (last && last.row.sites.length > 0)
    return last.heading === 'forward'
      ? { peg: last.row.to, side: 1, ...(toAndFro ? {} : { round: true }) }
      : { peg: last.row.from, side: -1 }
  // Work that went back and forth up to the join goes on in the round from its start.
  const closes = step.kind === 'pegs' && !toAndFro && shape === 'ring'
  if (closes && yarn.peg === pegs - 1 && yarn.side === 1) return start
  // At an opening the yarn that comes from a round stands before the first peg.
  const opens = step.kind === 'pegs' && toAndFro && inWork.from === 0 && inWork.to === pegs - 1
  return opens && yarn.round && shape === 'ring' ? start : yarn
}

/** Pegs beside which the yarn hangs: the next loops either way, with no more than `most` empty pegs. */
function besideYarn(yarn: Yarn, work: PieceWork, index: number, most: number): number[] {
  const { before, pegs: run, toAndFro, step } = work.steps[index] as StepWork
  const whole = run.from === 0 && run.to === pegs - 1
  const closed = work.pattern.loom.shape === 'ring' && !(whole && toAndFro)
  const own = step.kind === 'bind off' ? step.pegs : null
  const wanted = (peg: number) => (before.stacks[peg]?.length ?? 0) > 0
  const look = (start: number, way: 1 | -1): number[] => {
    let outside = 0
    for (let passed = 0; passed < pegs; passed++) {
      const at = start + way * passed
      const peg = closed ? (at + 2 * pegs) % pegs : at
      if (peg < 0 || peg >= pegs) return []
      if (wanted(peg)) return [peg]
      if (own && (peg < own.from || peg > own.to) && ++outside > most) return []
    }
    return []
  }
  return yarn.side === 1
    ? [...look(yarn.peg + 1, 1), ...look(yarn.peg, -1)]
    : [...look(yarn.peg, 1), ...look(yarn.peg - 1, -1)]
}

const arbitraryPart: fc.Arbitrary<Run | null> = fc.option(
  fc
    .tuple(fc.constantFrom(0, 3, 6, 9), fc.constantFrom(0, 3, 6, 9))
    .map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) + 2 })),
)

const arbitrarySteps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    fc.record({
      kind: fc.constant('pegs' as const),
      run: arbitraryPart,
      toAndFro: fc.boolean(),
    }),
    fc.record({
      kind: fc.constant('plain' as const),
      stitch: fc.constant(stitchOf('k')),
      amount: fc.record({ rows: fc.integer({ min: 1, max: 3 }) }),
    }),
    fc.record({
      kind: fc.constant('chart' as const),
      chart: fc.constantFrom('Chart', 'Odd'),
      times: fc.integer({ min: 1, max: 2 }),
    }),
    fc.record({
      kind: fc.constant('bind off' as const),
      how: fc.constantFrom(...bindOffs),
      pegs: arbitraryPart,
    }),
  ),
  { minLength: 2, maxLength: 8 },
)

const pieceOf = (shape: 'ring' | 'bar', steps: readonly Step[]): Pattern => {
  const two = newPattern(pegs, 2)
  const both = addChart(two, 'Odd', chartOn(newPattern(pegs, 1)))
  const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
  return {
    ...both,
    loom: { ...both.loom, shape },
    steps: [castOn, ...steps],
  }
}

test('a bind-off begins beside the yarn, or it is said that it cannot', () => {
  let sound = 0
  let found = 0
  fc.assert(
    fc.property(
      fc.constantFrom('ring' as const, 'bar' as const),
      arbitrarySteps,
      (shape, steps) => {
        const work = workPiece(pieceOf(shape, steps))
        const said = new Set(yarnReady.check(work, () => []).map(({ step }) => step))
        let yarn = start
        for (const [index, { step, edge, before }] of work.steps.entries()) {
          if (step.kind === 'bind off' && edge && edge.way.pegs.length > 0) {
            const near = besideYarn(yarn, work, index, pegs)
            const { from, to } = step.pegs ?? { from: 0, to: pegs - 1 }
            if (said.has(index)) {
              found++
              const held = before.stacks.flatMap((stack, peg) =>
                stack.length > 0 && peg >= from && peg <= to ? [peg] : [],
              )
              const ends = [held[0], held.at(-1)]
              expect(besideYarn(yarn, work, index, 3).filter((peg) => ends.includes(peg))).toEqual(
                [],
              )
            } else if (edge.newEnd) expect(step.how).toBe('graft')
            else {
              sound++
              expect(near).toContain(orderOf(work, index)[0])
            }
          }
          // Rows that begin elsewhere are said themselves; from there on the yarn is where they end.
          yarn = after(yarn, work, index)
        }
      },
    ),
    { numRuns: 1000 },
  )
  expect(sound).toBeGreaterThan(500)
  expect(found).toBeGreaterThan(100)
})

test('rows to and fro begin beside the yarn too, or it is said that they cannot', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('ring' as const, 'bar' as const),
      arbitrarySteps,
      (shape, steps) => {
        const work = workPiece(pieceOf(shape, steps))
        const said = new Set(yarnReady.check(work, () => []).map(({ step }) => step))
        let yarn = start
        for (const [index, { rows, toAndFro, before, pegs: run }] of work.steps.entries()) {
          const first = rows?.rows[0]
          // Where nothing is cast on that is said, and nothing hangs anywhere.
          const held = before.stacks.some(({ length }) => length > 0)
          if (first && toAndFro && held && first.row.sites.length > 0) {
            const gap = yarn.side === 1 ? yarn.peg + 1 : yarn.peg
            const closed = shape === 'ring' && !(run.from === 0 && run.to === pegs - 1)
            const hangs = (at: number) => at === gap || (closed && (at - gap) % pegs === 0)
            const { row, heading } = first
            const [begin, end] =
              heading === 'forward' ? [row.from, row.to + 1] : [row.to + 1, row.from]
            if (!said.has(index)) expect(hangs(begin)).toBe(true)
            // On a bar that is worked whole, rows go the way they lead.
            else if (shape === 'ring' || run.to - run.from < pegs - 1)
              expect([begin, end].filter(hangs)).toEqual([])
          }
          yarn = after(yarn, work, index)
        }
      },
    ),
    { numRuns: 1000 },
  )
})
