import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sameState } from '../../src/loom/state'
import { paint } from '../../src/pattern/edits/paint'
import { deleteRows, insertRows } from '../../src/pattern/edits/rows'
import { setRun } from '../../src/pattern/edits/turning'
import type { Pattern, Row } from '../../src/pattern/pattern'
import { workPattern, type PatternRun, type Work } from '../../src/pattern/work'
import { standardVocabulary, stitchOf } from '../../src/stitches/vocabulary'
import { arbitraryOneChart } from '../arbitraries'
import { arbitraryBalancedCells, arbitrarySteadyCells, piece } from './pieces'
import { copyOf } from '../cells'

const arbitraryEdit = fc.oneof(
  {
    weight: 5,
    arbitrary: fc
      .tuple(fc.constantFrom(...standardVocabulary.stitches), fc.nat(99), fc.nat(99))
      .map(
        ([stitch, row, column]) =>
          (p: Pattern) =>
            paint(p, stitch, row % chartOn(p).rows.length, column % chartOn(p).columns),
      ),
  },
  fc.nat(99).map((row) => (p: Pattern) => insertRows(p, row % chartOn(p).rows.length)),
  fc
    .nat(99)
    .map(
      (row) => (p: Pattern) =>
        deleteRows(p, row % chartOn(p).rows.length, row % chartOn(p).rows.length),
    ),
  fc.tuple(fc.nat(99), fc.nat(9), fc.nat(9)).map(
    ([row, a, b]) =>
      (p: Pattern) =>
        setRun(p, row % chartOn(p).rows.length, { from: Math.min(a, b), to: Math.max(a, b) }),
  ),
)

const arbitraryStart = fc.oneof(
  fc.array(arbitrarySteadyCells(14), { minLength: 1, maxLength: 9 }).map((rows) => piece(rows)),
  fc.array(arbitraryBalancedCells(14), { minLength: 1, maxLength: 9 }).map((rows) => piece(rows)),
  arbitraryOneChart({ columns: 12, cut: true }).map((pattern): Pattern =>
    withChart(
      { ...pattern, loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 12) } },
      { bands: chartOn(pattern).bands.map((band) => ({ ...band, times: 2 + (band.times % 4) })) },
    ),
  ),
)

/** A row's faults in no special order: a row may be worked again from its middle. */
const faultsOf = (work: Work, index: number) =>
  [...(work.run.rows[index]?.faults ?? [])].map((fault) => JSON.stringify(fault)).sort()

describe('working a piece again after an edit', () => {
  it('gives what working it from nothing gives', () => {
    fc.assert(
      fc.property(arbitraryStart, fc.array(arbitraryEdit, { maxLength: 10 }), (start, edits) => {
        let pattern = start
        let work = workPattern(pattern)
        for (const edit of edits) {
          pattern = edit(pattern)
          work = workPattern(pattern, work)
          const afresh = workPattern(copyOf(pattern))
          expect(work.run.rows.length).toBe(afresh.run.rows.length)
          afresh.run.rows.forEach((run, index) => {
            const again = work.run.rows[index]
            expect(again && sameState(again.before, run.before)).toBe(true)
            expect(again && sameState(again.after, run.after)).toBe(true)
            expect(again?.miscount).toEqual(run.miscount)
            expect(again?.heading).toBe(run.heading)
            expect(again?.loops).toBe(run.loops)
            expect(faultsOf(work, index)).toEqual(faultsOf(afresh, index))
          })
        }
      }),
      { numRuns: 500 },
    )
  })

  it('keeps the runs of all rows before the one that changed', () => {
    fc.assert(
      fc.property(
        fc.array(arbitrarySteadyCells(10), { minLength: 2, maxLength: 9 }),
        fc.nat(99),
        fc.nat(9),
        (rows, at, column) => {
          const pattern = piece(rows)
          const row = at % rows.length
          const work = workPattern(pattern)
          const after = workPattern(paint(pattern, stitchOf('ew'), row, column), work)
          for (let index = 0; index < row; index++)
            expect(after.run.rows[index]).toBe(work.run.rows[index])
        },
      ),
    )
  })

  it('stops as soon as the loom is as it was before', () => {
    const rows = Array.from({ length: 50 }, () => Array.from({ length: 20 }, () => 'k'))
    const pattern = piece(rows)
    const work = workPattern(pattern)
    const after = workPattern(paint(pattern, stitchOf('p'), 10, 5), work)
    // The purl bump is worked off by the row after it, which leaves the loom as it was.
    expect(after.run.worked).toBe(2)
    expect(after.run.rows[12]).toBe(work.run.rows[12])
  })
  it('works plain rows that find the loom as they left it only once', () => {
    const plain = piece(Array.from({ length: 40 }, () => Array.from({ length: 20 }, () => 'k')))
    const row = chartOn(plain).rows[0] as Row
    const { run } = workPattern(withChart(plain, { rows: Array.from({ length: 40 }, () => row) }))
    // The first one works off the cast-on, the second its own loops; all others are like the second.
    expect(run.worked).toBe(2)
    expect(run.rows).toHaveLength(40)
    expect(run.rows[39]).toBe(run.rows[1])
    expect(sameState(run.end, (run.rows[0] as PatternRun).after)).toBe(true)
  })
})
