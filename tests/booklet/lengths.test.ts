/** A length of one thing is one number, wherever it stands: in words, picture, size, list of steps. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stepFacts } from '../../src/bench/piece/stepWords'
import { totalsInOneLine } from '../../src/bench/piece/totalsText'
import { footLength } from '../../src/drawing/piece/foot'
import { lengthsOf } from '../../src/drawing/piece/length'
import { profileOf } from '../../src/drawing/piece/profile'
import { addStep } from '../../src/pattern/edits/piece'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { centimetres } from '../../src/pattern/size'
import { totalsOf } from '../../src/pattern/totals'
import { workPiece } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { allText, layOut, textsOf, titlesOf } from './read'
import { stitchOf } from '../../src/stitches/vocabulary'

/** "12 rounds": the lengths that are told of so many rows, in words and beside the picture. */
function lengthsByRows(texts: readonly string[]): Map<string, Set<string>> {
  const told = new Map<string, Set<string>>()
  for (const text of texts)
    for (const [, rows = '', length = ''] of text.matchAll(
      /(\d+) (?:rnds?|rounds?|rows?)(?: of [^(]*?)?(?:, | \(about )([\d.]+ cm)/gu,
    ))
      told.set(rows, (told.get(rows) ?? new Set()).add(length))
  return told
}

/** All that a piece says of itself: the booklet with its pictures, then what the bench lists. */
function textsOfPiece(pattern: Pattern): string[] {
  const work = workPiece(pattern)
  const booklet = layOut(pattern)
  const lengths = lengthsOf(profileOf(work), work.steps.length)
  return [
    allText(booklet),
    // A label's rows and its length may stand on two lines.
    textsOf(booklet)
      .map(({ text }) => text)
      .join(', '),
    ...work.steps.map((_, index) => stepFacts(work, index, lengths[index] ?? 0).join(', ')),
  ]
}

const banded = (mm: number, gauge: { stitches: number; rows: number }): Pattern =>
  addStep({ ...newPattern(24, 4), gauge }, 1, {
    kind: 'plain',
    stitch: stitchOf('k'),
    amount: { mm },
  })

describe('one length', () => {
  test('of plain rows that are asked for by length is the length that is worked', () => {
    const rowsTold = new Set<number>()
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 400 }),
        fc.record({
          stitches: fc.integer({ min: 8, max: 30 }),
          rows: fc.integer({ min: 8, max: 40 }),
        }),
        (mm, gauge) => {
          const told = lengthsByRows(textsOfPiece(banded(mm, gauge)))
          const rows = Math.max(1, Math.round((mm * gauge.rows) / 100))
          expect([...(told.get(String(rows)) ?? [])]).toEqual([
            centimetres((rows * 100) / gauge.rows),
          ])
          for (const lengths of told.values()) expect(lengths.size).toBe(1)
          rowsTold.add(rows)
        },
      ),
      { numRuns: 60 },
    )
    expect(rowsTold.size).toBeGreaterThan(10)
  })

  test.each(starterCharts.map(({ id, pattern }) => [id, pattern()] as const))(
    '%s: no two for so many rows, nor for the whole, nor for the foot',
    (_, pattern) => {
      const work = workPiece(pattern)
      const texts = textsOfPiece(pattern)
      const [all = ''] = texts
      for (const [rows, lengths] of lengthsByRows(texts)) expect([rows, ...lengths]).toHaveLength(2)
      const whole = /([\d.]+ cm) (?:high|from cast-on)/u.exec(all)?.[1]
      expect(whole).toBeDefined()
      const across = /size: about ([\d.]+) cm (?:round|wide)/u.exec(all)?.[1]
      for (const [, noted] of pattern.notes.matchAll(/([\d.]+) (?:cm round before|by [\d.]+ cm)/gu))
        expect(noted).toBe(across)
      for (const [, noted] of pattern.notes.matchAll(/by ([\d.]+ cm)|([\d.]+ cm) deep/gu))
        expect(noted ?? whole).toBe(whole)
      for (const title of titlesOf(layOut(pattern)))
        for (const [, long] of title.matchAll(/, ([\d.]+ cm) long/gu)) expect(long).toBe(whole)
      const foot = footLength(profileOf(work))
      if (foot === null) return
      expect(all).toContain(`Foot: about ${centimetres(foot)} from heel`)
      expect(totalsInOneLine(totalsOf(work).whole, work, foot).replaceAll('\u00a0', ' ')).toContain(
        `foot ${centimetres(foot)}`,
      )
    },
  )
})

test('the lengths of the steps as printed come to that of the whole', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 8, max: 150 }), { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 8, max: 40 }),
      (parts, rows) => {
        const pattern = parts.reduce<Pattern>(
          (before, mm) =>
            addStep(before, 1, { kind: 'plain', stitch: stitchOf('k'), amount: { mm } }),
          { ...newPattern(24, 4), gauge: { stitches: 20, rows } },
        )
        const work = workPiece(pattern)
        const lengths = lengthsOf(profileOf(work), work.steps.length)
        const told = work.steps.map(
          (_, index) =>
            /([\d.]+) cm/u.exec(stepFacts(work, index, lengths[index] ?? 0).join(', '))?.[1] ?? 0,
        )
        const sum = told.reduce<number>((all, one) => all + Math.round(10 * Number(one)), 0)
        const whole = centimetres(sum)
        expect(allText(layOut(pattern))).toContain(`and ${whole} from cast-on`)
        expect(titlesOf(layOut(pattern)).join()).toContain(`, ${whole} long`)
      },
    ),
    { numRuns: 30 },
  )
})

test.each([
  [4, '0.4 cm'],
  [35.7, '3.6 cm'],
  [99.4, '9.9 cm'],
  [99.6, '10 cm'],
  [122, '12.2 cm'],
  [123, '12.3 cm'],
  [247.6, '24.8 cm'],
])('%d mm are told as %s', (mm, said) => {
  expect(centimetres(mm)).toBe(said)
})
