/** What mends a cross leaves alone: the looks of all other pegs, and all other crosses. */
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkAfresh } from '../../src/checks/check'
import type { Finding } from '../../src/pattern/finding'
import { setRepeat } from '../../src/pattern/edits/columns'
import { paint } from '../../src/pattern/edits/paint'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import type { Pattern } from '../../src/pattern/pattern'
import { placed } from '../../src/pattern/row'
import { workPattern } from '../../src/pattern/work'
import { patternOf } from '../pattern/edits/chart-text'
import { stitchOf } from '../../src/stitches/vocabulary'
import { idsIn } from '../cells'

const cuts = ['cross-join', 'cross-repeat-edge', 'cross-bar-edge', 'cross-overlap']
const cutIn = (pattern: Pattern): readonly Finding[] =>
  checkAfresh(pattern).findings.filter(({ rule }) => cuts.includes(rule))

/** Knit or purl, peg by peg, after each row. */
const looks = (pattern: Pattern): string[] =>
  workPattern(pattern).run.rows.map(({ after }) =>
    after.stacks.map((stack) => (stack.at(-1)?.kind.includes('purl') ? 'p' : 'k')).join(''),
  )

/** "row: id", of every cross that has all its columns, in no order that hangs on where the round starts. */
const wholeCrosses = (pattern: Pattern): string[] =>
  chartOn(pattern)
    .rows.flatMap((row, index) =>
      placed(row)
        .filter(({ stitch, columns }) => stitch.width > 1 && stitch.width === columns)
        .map(({ stitch }) => `${index}: ${stitch.id}`),
    )
    .toSorted()

const rib = 'k k p k k p k k p k k p'
/** A rib with two crosses in line, and one between them two rows on: each over k2, p1, k1 or the like. */
const cuff = patternOf(
  rib,
  'p 2/2_LC . . . p p 2/2_RC . . . p',
  'p k k k k p p k k k k p',
  'p k k k k p p k k k k p',
  'p k k k k p p k k k k p',
  'p 2/2_LC . . . p p 2/2_RC . . . p',
)
const whole = setRepeat({ ...cuff, loom: { ...cuff.loom, pegs: 36 } }, { from: 0, to: 11 })

describe('when the round was started inside a cross', () => {
  it.each([
    ['over the join', cuff],
    ['at the edge of the repeat', whole],
  ])('%s, the first mend starts it a little earlier and makes every cross whole', (_, pattern) => {
    for (const by of [2, 3, 4, 8, 9, 10]) {
      const cut = rotateColumns(pattern, by)
      const findings = cutIn(cut)
      expect(findings.length).toBe(2)
      for (const { fixes } of findings) {
        const [first] = fixes
        const pegs = by > 6 ? by - 7 : by - 1
        expect(first?.label).toBe(
          `Start the round ${pegs === 1 ? '1 peg' : `${pegs} pegs`} earlier, so that every cross is whole`,
        )
        const mended = first?.edit(cut) ?? cut
        expect(cutIn(mended)).toEqual([])
        expect(wholeCrosses(mended)).toEqual(wholeCrosses(pattern))
        expect(looks(mended)).toEqual(looks(rotateColumns(pattern, by - pegs)))
      }
    }
  })

  it('a repeat that ends inside a cross is started where it holds the cross whole', () => {
    const chart = patternOf('p k k 2/2_LC . . . p', 'p k k k k k k p')
    const ring = { ...chart, loom: { ...chart.loom, pegs: 38 } }
    const cut = setRepeat(ring, { from: 0, to: 4 })
    const starts = cutIn(cut)[0]?.fixes.filter(({ label }) => label.startsWith('Start')) ?? []
    expect(starts.map(({ label }) => label)).toEqual([
      'Start the repeat 2 pegs later, so that every cross is whole',
    ])
    const mended = starts[0]?.edit(cut) ?? cut
    expect(chartOn(mended).repeat).toEqual({ from: 2, to: 6 })
    expect(chartOn(mended).rows).toEqual(chartOn(cut).rows)
    expect(checkAfresh(mended).findings.filter(({ severity }) => severity === 'error')).toEqual([])
    // Where there is no room for it, nothing is promised.
    const tight = setRepeat(ring, { from: 5, to: 7 })
    expect(cutIn(tight).flatMap(({ fixes }) => fixes.map(({ label }) => label))).not.toContain(
      'Start the repeat 1 peg later, so that every cross is whole',
    )
  })

  it('no mend puts the cross over a purl column or over another cross', () => {
    const cut = rotateColumns(cuff, 3)
    for (const { fixes } of cutIn(cut))
      for (const { label, edit } of fixes)
        if (label.startsWith('Move')) expect(looks(edit(cut)), label).toEqual(looks(cut))
  })

  it('a purl that was painted where the other half was is not taken away', () => {
    const cut = rotateColumns(patternOf('k k 2/2_LC . . . k k', 'k k k k k k k k'), 4)
    const [row] = chartOn(cut).rows
    expect(idsIn(row?.cells)).toEqual(['k', 'k', 'k', 'k', 'k', 'k', '2/2 LC', ''])
    const painted = paint(cut, stitchOf('p'), 0, 1)
    const labels = cutIn(painted).flatMap(({ fixes }) => fixes.map(({ label }) => label))
    expect(labels.filter((label) => label.startsWith('Start'))).toEqual([])
    expect(labels).toContain('Knit pegs 7-8 instead')
  })
})

const stitches = [
  'k',
  'p',
  'k',
  'p',
  'ptbl',
  '1/1_LC .',
  '2/2_LC . . .',
  '2/1_RPC . .',
  '2/2_LPC . . .',
]
const arbitraryRow = (columns: number) =>
  fc
    .array(fc.constantFrom(...stitches), { minLength: columns, maxLength: columns })
    .map((list) => list.join(' ').split(' ').slice(0, columns).join(' '))

/** Charts of crosses and textures in which the end of the round, or the edge, cuts some. */
const arbitraryCut = fc
  .tuple(arbitraryRow(10), arbitraryRow(10), fc.nat(9), fc.constantFrom('ring', 'repeat', 'bar'))
  .map(([a, b, by, kind]) => {
    const pattern = rotateColumns(patternOf(a, 'k k k k k k k k k k', b), by)
    if (kind === 'bar') return { ...pattern, loom: { ...pattern.loom, shape: 'bar' as const } }
    return kind === 'ring'
      ? pattern
      : setRepeat({ ...pattern, loom: { ...pattern.loom, pegs: 20 } }, { from: 0, to: 9 })
  })

/** 0-based pegs that a text names: "pegs 3-5" names 2, 3 and 4. */
const named = (text: string): number[] =>
  [...text.matchAll(/pegs? (\d+)(?:-(\d+))?/g)].flatMap(([, from, to = from]) =>
    Array.from({ length: Number(to) - Number(from) + 1 }, (_, at) => Number(from) - 1 + at),
  )

it('outside the pegs of the finding and its label a mend leaves looks and crosses as they are', () => {
  let asked = 0
  fc.assert(
    fc.property(arbitraryCut, (pattern) => {
      const before = looks(pattern)
      for (const { fixes, place } of cutIn(pattern))
        for (const { label, edit } of fixes) {
          if (label.startsWith('Start')) continue
          asked++
          const mended = edit(pattern)
          const columns = new Set(
            [...named(label), ...place.pegs.flatMap(({ from, to }) => range(from, to))].map(
              (peg) => workPattern(pattern).layout.columnOf[peg],
            ),
          )
          looks(mended).forEach((look, row) => {
            ;[...look].forEach((one, peg) => {
              if (
                place.rows.includes(row) &&
                columns.has(workPattern(pattern).layout.columnOf[peg])
              )
                return
              expect(one, `${label}: row ${row + 1}, peg ${peg + 1}`).toBe(before[row]?.[peg])
            })
          })
          for (const cross of wholeCrosses(pattern))
            expect(wholeCrosses(mended), label).toContain(cross)
        }
    }),
    { numRuns: 400 },
  )
  expect(asked).toBeGreaterThan(200)
})

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at)

it('to start the round elsewhere loses no cross and changes looks only where a cross is made whole', () => {
  let asked = 0
  fc.assert(
    fc.property(arbitraryCut, (pattern) => {
      for (const { fixes } of cutIn(pattern))
        for (const { label, edit } of fixes) {
          const [, pegs, way] = /^Start the round (\d+) pegs? (earlier|later)/.exec(label) ?? []
          if (!pegs) continue
          asked++
          const mended = edit(pattern)
          const kept = wholeCrosses(mended)
          for (const cross of wholeCrosses(pattern)) expect(kept).toContain(cross)
          const moved = rotateColumns(pattern, way === 'later' ? Number(pegs) : -Number(pegs))
          chartOn(mended).rows.forEach((row, index) => {
            const own = new Set(
              placed(row).flatMap(({ stitch, column, columns }) =>
                stitch.width > 1 ? range(column, column + columns - 1) : [],
              ),
            )
            row.cells.forEach((cell, column) => {
              if (!own.has(column)) expect(cell).toBe(chartOn(moved).rows[index]?.cells[column])
            })
          })
        }
    }),
    { numRuns: 400 },
  )
  expect(asked).toBeGreaterThan(50)
})
