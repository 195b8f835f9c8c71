import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { paint } from '../../../src/pattern/edits/paint'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { compare } from '../../../src/words/compare/compare'
import { arbitraryPiece, compared, linesOf, messages, readFor, repaired } from './helpers'
import { stitchOf } from '../../../src/stitches/vocabulary'

const written = (pattern: Pattern): string[] => linesOf(workPattern(pattern))

describe('comparing', () => {
  it('finds no difference in words written from the chart', () => {
    fc.assert(
      fc.property(arbitraryPiece, (pattern) => {
        const comparison = compared(pattern, written(pattern))
        expect(messages(comparison)).toEqual([])
        expect(new Set(comparison.agreement)).toEqual(new Set(['same']))
      }),
      { numRuns: 300 },
    )
  })

  it('finds one difference when one stitch of the chart is changed', () => {
    fc.assert(
      fc.property(arbitraryPiece, fc.nat(), fc.nat(), (pattern, row, column) => {
        const { rows, columns } = chartOn(pattern)
        const at = row % rows.length
        const change = chartOn(pattern).rows[at]?.cells[column % columns]?.id === 'k' ? 'p' : 'k'
        const changed = paint(pattern, stitchOf(change), at, column % columns)
        fc.pre(changed !== pattern)
        const { differences, agreement } = compared(changed, written(pattern))
        expect(differences.map(({ message }) => message)).toHaveLength(1)
        expect(agreement[at]).toBe('differs')
      }),
      { numRuns: 300 },
    )
  })

  it('finds one difference when one line of the words is taken out', () => {
    fc.assert(
      fc.property(arbitraryPiece, fc.nat(), (pattern, n) => {
        const lines = written(pattern)
        fc.pre(lines.length > 1)
        const comparison = compared(pattern, lines.toSpliced(n % lines.length, 1))
        expect(messages(comparison)).toHaveLength(1)
        expect(comparison.agreement.some((state) => state !== 'same')).toBe(true)
      }),
      { numRuns: 300 },
    )
  })

  it('offers repairs that take their difference away and add none', () => {
    fc.assert(
      fc.property(arbitraryPiece, arbitraryPiece, (pattern, other) => {
        const comparison = compared(pattern, written({ ...other, loom: { ...pattern.loom } }))
        const before = comparison.differences.length
        for (const { fixes, rule } of comparison.differences)
          for (const fix of fixes) {
            const after = repaired(comparison, fix)
            expect(after.differences.length).toBeLessThan(before)
            const count = (list: typeof after.differences) =>
              list.filter((one) => one.rule === rule).length
            expect(count(after.differences)).toBeLessThan(count(comparison.differences))
          }
      }),
      { numRuns: 60 },
    )
  })

  it('of the next version is what comparing afresh gives', () => {
    fc.assert(
      fc.property(arbitraryPiece, fc.nat(), fc.nat(), (pattern, row, column) => {
        const text = written(pattern).join('\n')
        const first = compare(readFor(pattern, text), workPattern(pattern))
        const edited = paint(
          pattern,
          stitchOf('p'),
          row % chartOn(pattern).rows.length,
          column % chartOn(pattern).columns,
        )
        const next = compare(first.reading, workPattern(edited, first.work), first)
        const afresh = compare(readFor(pattern, text), workPattern(edited))
        expect(messages(next)).toEqual(messages(afresh))
        expect(next.agreement).toEqual(afresh.agreement)
      }),
      { numRuns: 100 },
    )
  })
})
