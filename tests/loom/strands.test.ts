import { withChart } from '../../src/pattern/edits/chart'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Loom } from '../../src/loom/loom'
import type { Move } from '../../src/loom/move'
import { crossings, transfers } from '../../src/loom/row'
import { holdsTurn, isTurn, noWale, stackOf, strand, strandKinds } from '../../src/loom/strand'
import { workRow } from '../../src/loom/work'
import { directions } from '../../src/loom/direction'
import { habitsOf } from '../../src/pattern/habits'
import { workPattern } from '../../src/pattern/work'
import { arbitraryOneChart } from '../arbitraries'
import { arbitraryBalancedCells, arbitrarySteadyCells, inWork, piece, walesOn } from './pieces'

const arbitraryLoom = fc.record({
  shape: fc.constantFrom('ring' as const, 'bar' as const),
  direction: fc.constantFrom(...directions),
})
const arbitraryHabits = fc.record({
  crossing: fc.constantFrom(...crossings),
  transfer: fc.constantFrom(...transfers),
})

it('a stack holds a turn where one of several strands is one', () => {
  const strands = fc.array(fc.constantFrom(...strandKinds), { minLength: 1, maxLength: 6 })
  fc.assert(
    fc.property(strands, (kinds) => {
      const stack = stackOf(kinds.map((kind, index) => strand(kind, index === 0 ? 0 : noWale)))
      expect(holdsTurn(stack)).toBe(kinds.length > 1 && stack.some(isTurn))
    }),
  )
})

describe('strands are neither lost nor made', () => {
  it('except by what stitches take and make', () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryBalancedCells(16), { minLength: 1, maxLength: 6 }),
        arbitraryLoom,
        arbitraryHabits,
        (rows, loom, habits) => {
          for (const run of workPattern(piece(rows, loom, habits)).run.rows) {
            expect(run.miscount).toBeNull()
            const before = inWork(run.before.stacks)
            expect(inWork(run.after.stacks)).toBe(before - run.row.takes + run.row.makes)
            const wales = walesOn(run.after)
            expect(new Set(wales).size).toBe(wales.length)
            const never = ['empty peg', 'peg in use', 'start']
            expect(run.faults.filter(({ kind }) => never.includes(kind))).toEqual([])
          }
        },
      ),
    )
  })

  it('at all where every stitch takes and makes one loop on each peg', () => {
    fc.assert(
      fc.property(
        fc.array(arbitrarySteadyCells(14), { minLength: 1, maxLength: 8 }),
        arbitraryLoom,
        arbitraryHabits,
        (rows, loom, habits) => {
          const { run } = workPattern(piece(rows, loom, habits))
          const all = Array.from({ length: 14 }, (_, wale) => wale)
          for (const { after } of run.rows)
            expect(walesOn(after).toSorted((a, b) => a - b)).toEqual(all)
        },
      ),
    )
  })

  /** Strands that each move adds to pegs and needle together; a worked peg is left with one. */
  const adds: Partial<Record<Move['do'], number>> = { lay: 1, draw: 1, bar: 1, base: 1 }

  it('by any single move of the hands, and the spare needle ends empty', () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryBalancedCells(12), { minLength: 1, maxLength: 4 }),
        arbitraryLoom,
        arbitraryHabits,
        (rows, loom, habits) => {
          const pattern = piece(rows, loom, habits)
          for (const { row, before } of workPattern(pattern).run.rows) {
            let last = { total: before.stacks.flat().length, stacks: [...before.stacks] }
            let parked = 0
            workRow(before, row, habitsOf(pattern), (move: Move, at: Loom) => {
              const total = at.stacks.flat().length + at.needle.flatMap(({ stack }) => stack).length
              const worked =
                move.do === 'work' ? 1 - (last.stacks[move.peg]?.length ?? 0) : (adds[move.do] ?? 0)
              expect(total - last.total, move.do).toBe(worked)
              last = { total, stacks: [...at.stacks] }
              parked = at.needle.length
            })
            expect(parked).toBe(0)
          }
        },
      ),
    )
  })
})

describe('any chart at all', () => {
  it('can be worked, and every peg keeps a stack', () => {
    fc.assert(
      fc.property(arbitraryOneChart({ cut: true }), (pattern) => {
        const small = withChart(pattern, { bands: [] })
        for (const { after } of workPattern(small).run.rows) {
          expect(after.stacks.length).toBe(pattern.loom.pegs)
          expect(after.stacks.every((stack) => Array.isArray(stack))).toBe(true)
          expect(after.yarn.gap).toBeGreaterThanOrEqual(0)
          expect(after.yarn.gap).toBeLessThanOrEqual(pattern.loom.pegs)
        }
      }),
    )
  })
})
