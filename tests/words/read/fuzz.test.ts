import { chartOn } from '../../../src/pattern/charts'
import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workPattern } from '../../../src/pattern/work'
import { plainText } from '../../../src/words/text'
import { chartFrom } from '../../../src/words/read/chart/chartFrom'
import { readLimits } from '../../../src/words/read/limits'
import { read } from '../../../src/words/read/read'
import type { Reading, ReadSettings, TextRange } from '../../../src/words/read/reading'
import { readCases, usual as settings } from './cases'
import { workable } from './workable'

const anySettings: Arbitrary<ReadSettings> = fc.record(
  {
    shape: fc.constantFrom('ring' as const, 'bar' as const),
    pegs: fc.integer({ min: 1, max: 60 }),
    direction: fc.constant('clockwise' as const),
    knit: fc.constant('flat' as const),
    terms: fc.constantFrom('us' as const, 'uk' as const),
    size: fc.nat(4),
    needles: fc.boolean(),
  },
  { noNullPrototype: true },
)

const inside = ({ from, to }: TextRange, text: string) =>
  from >= 0 && from <= to && to <= text.length

/** Whatever the text is, an answer has this form. */
function expectSound(reading: Reading) {
  const { text, rows, remarks, tokens, sections, bands } = reading
  expect(rows.length).toBeLessThanOrEqual(readLimits.rows)
  // A few remarks on the text as a whole may stand beside those on its rows.
  expect(remarks.length).toBeLessThanOrEqual(2 * readLimits.remarks + 3)
  let work = 0
  for (const row of rows) {
    const stitches = row.stitches
    work += stitches.length
    expect(stitches.length).toBeLessThanOrEqual(readLimits.stitches)
    expect(stitches.every(({ range }) => inside(range, text))).toBe(true)
    expect([inside(row.range, text), inside(row.saidAt, text)]).toEqual([true, true])
    const takes = stitches.reduce((sum, { stitch }) => sum + stitch.takes, 0)
    const makes = stitches.reduce((sum, { stitch }) => sum + stitch.makes, 0)
    expect([row.takes, row.makes, row.after]).toEqual([takes, makes, row.before - takes + makes])
  }
  expect(work).toBeLessThanOrEqual(readLimits.work + readLimits.stitches)
  for (const { range, row, message, fixes } of remarks) {
    expect(inside(range, text)).toBe(true)
    expect(row === null || (row >= -1 && row <= rows.length)).toBe(true)
    expect(message).not.toMatch(/undefined|NaN|Infinity/)
    for (const { changes } of fixes)
      expect(changes.every((change) => inside(change.range, text))).toBe(true)
  }
  let end = 0
  const misplaced = tokens.find(({ range }) => {
    const wrong = !inside(range, text) || range.from < end
    end = range.to
    return wrong
  })
  expect(misplaced).toBeUndefined()
  for (const { range } of sections) expect(inside(range, text)).toBe(true)
  for (const { from, to, times } of bands)
    expect(from >= 0 && from + (to - from + 1) * times <= rows.length).toBe(true)
}

const phrases = [
  ...new Set(
    readCases()
      .flatMap(({ lines }) => lines.map(({ text }) => text))
      .flatMap((line) => line.split(/(?<=[,;.:()[\]*])|(?= )/)),
  ),
  '\n',
  '9999',
  'Abbreviations\n',
]

/** Words of the trade in any order. */
const salad = fc.array(fc.constantFrom(...phrases), { maxLength: 60 }).map((list) => list.join(''))

const patternText = workable.map((pattern) => plainText(workPattern(pattern)))

/** A real text with pieces taken out, doubled, or replaced. */
const spoiled = fc
  .tuple(
    patternText,
    fc.array(
      fc.tuple(fc.nat(2000), fc.nat(12), fc.oneof(fc.string(), fc.constantFrom(...phrases))),
      {
        maxLength: 6,
      },
    ),
  )
  .map(([text, changes]) =>
    changes.reduce((now, [at, count, put]) => {
      const from = at % (now.length + 1)
      return now.slice(0, from) + put + now.slice(from + count)
    }, text),
  )

describe('any text at all', () => {
  it.each([
    ['signs of any kind', fc.string({ unit: 'binary', maxLength: 300 }), 400],
    ['letters and marks', fc.string({ unit: 'grapheme', maxLength: 300 }), 300],
    ['words of the trade in any order', salad, 1500],
    ['real instructions, spoiled', spoiled, 250],
  ] as const)('%s', (_, text, numRuns) => {
    fc.assert(
      fc.property(text, anySettings, (words, how) => expectSound(read(words, how))),
      { numRuns },
    )
  })

  it('can be put on a loom, with room or without', () => {
    fc.assert(
      fc.property(salad, anySettings, (words, how) => {
        const { pattern } = chartFrom(read(words, { ...how, pegs: Math.max(3, how.pegs) }))
        const { rows, columns, bands } = chartOn(pattern)
        expect(rows.length).toBeGreaterThan(0)
        expect(rows.every(({ cells }) => cells.length === columns)).toBe(true)
        expect(bands.every(({ from, to }) => from <= to && to < rows.length)).toBe(true)
        expect(workPattern(pattern).run.rows.length).toBeGreaterThan(0)
      }),
      { numRuns: 500 },
    )
  })

  const million = 1_000_000
  const fill = (part: string, length = million) =>
    part.repeat(Math.ceil(length / part.length)).slice(0, length)
  it.each([
    ['brackets', fill('(')],
    ['brackets that are opened and closed', fill('(', million / 2) + fill(')', million / 2)],
    ['nested repeats', `Rnd 1: ${fill('(k1, ')}`],
    [
      'huge repeats inside huge repeats',
      `Rnd 1: ${fill('[', 11)}k1${fill('] 99999999 times', 176)}`,
    ],
    ['asterisks', `Rnd 1: ${fill('* k1 ')}`],
    ['repeats of all before', `Rnd 1: ${fill('k1; rep to end; ')}`],
    ['turns', `Row 1: ${fill('(turn, k1, turn, p1) 9999 times, ')}`],
    ['one long word', fill('k')],
    ['one long number', `Rnd 1: k${fill('9')}`],
    ['stitches without a space', `Rnd 1: ${fill('k1')}`],
    ['words that are not known', `Rnd 1: ${fill('frobble zonk ')}`],
    ['heads', fill('Rnds 1-2000: knit\n')],
    ['repeats of rows', `Rnd 1: knit\n${fill('Rep Rnd 1 9999 times more.\n')}`],
    ['rows that are not there', fill('Next 999999 rnds: As Rnd 7.\n')],
    ['numbers of rows', `Rows 1${fill(', 3')}: knit`],
    ['lines', fill('\n')],
    ['blanks in a row', `Rnd 1: k${fill(' ')}p`],
    ['blanks in a line', `Work${fill(' ')}Cuff`],
    ['blanks behind sizes', `Sizes${fill(' ')}S`],
    ['blanks behind a size', `Rnd 1 (for size${fill(' ')}only): knit`],
    ['blanks behind an abbreviation', `k${fill(' ')}= knit`],
    ['blanks before a mark', `Abbreviations\n${fill(' ')}k = knit`],
    ['rows for one size', fill('Sizes S (M, L)\nSize M only: Rnd 1: knit\n')],
    ['names of sizes', `Sizes ${fill('a, ')}\nSize b only: Rnd 1: knit`],
    ['spaces behind sizes', `${fill('sizes   ')}\nSize b only: Rnd 1: knit`],
    ['numbers with commas', `Rnd 1: ${fill('1, 2, 3, ')}`],
    ['fabrics', `Rnd 1: ${fill('k1, p1 rib, garter st, ')}`],
    ['several in one', `Rnd 1: ${fill('(k1, p1) in next st, ')}`],
    ['definitions', fill('LC = 2/2 LC\n')],
  ])('a million characters: %s', (_, text) => expectSound(read(text, settings)))

  it('is read up to a million characters, and says so', () => {
    const reading = read(fill('Rnd 1: knit\n', million + 50), settings)
    expectSound(reading)
    expect(reading.remarks.at(-1)).toMatchObject({ rule: 'too-long', range: { from: million } })
  })
})
