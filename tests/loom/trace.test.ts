import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { trace } from '../../src/loom/trace'
import { walkRow } from '../../src/loom/walk'
import { habitsOf } from '../../src/pattern/habits'
import { workPattern } from '../../src/pattern/work'
import { arbitraryOneChart } from '../arbitraries'

describe('any chart at all', () => {
  test('the strands that are followed are the simulator’s, peg by peg, at every row', () => {
    fc.assert(
      fc.property(arbitraryOneChart({ rows: 4 }), (pattern) => {
        const { run } = workPattern(pattern)
        const traced = trace(run.rows, habitsOf(pattern))
        const kinds = (pegs: readonly (readonly number[])[]) =>
          pegs.map((stack) => stack.map((id) => traced.loops[id]?.kind))
        run.rows.forEach(({ before }, row) =>
          expect(kinds(traced.before[row] ?? [])).toEqual(
            before.stacks.map((stack) => stack.map(({ kind }) => kind)),
          ),
        )
        expect(kinds(traced.onPegs)).toEqual(
          run.end.stacks.map((stack) => stack.map(({ kind }) => kind)),
        )
      }),
      { numRuns: 60 },
    )
  })

  test('a loop is drawn through loops that are older, each of which is used up once', () => {
    fc.assert(
      fc.property(arbitraryOneChart({ rows: 4 }), (pattern) => {
        const { loops } = trace(workPattern(pattern).run.rows, habitsOf(pattern))
        for (const { id, through } of loops)
          for (const used of through) expect(used).toBeLessThan(id)
        const into = loops.flatMap(({ id, through, how }) =>
          how === null ? [] : through.map((used) => `${used} ${id}`),
        )
        expect(into.length).toBe(loops.filter((loop) => loop.into >= 0).length)
      }),
      { numRuns: 40 },
    )
  })

  test('walking a row ends where the simulator ends, whichever way it is asked', () => {
    fc.assert(
      fc.property(arbitraryOneChart({ rows: 3 }), (pattern) => {
        for (const row of workPattern(pattern).run.rows) {
          const moments = walkRow(row, habitsOf(pattern))
          expect(moments[0]?.stacks).toBe(row.before.stacks)
          const kinds = moments.at(-1)?.stacks.map((stack) => stack.map(({ kind }) => kind))
          expect(kinds).toEqual(row.after.stacks.map((stack) => stack.map(({ kind }) => kind)))
        }
      }),
      { numRuns: 40 },
    )
  })
})
