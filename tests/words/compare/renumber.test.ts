import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { setBand } from '../../../src/pattern/edits/rows'
import type { Pattern } from '../../../src/pattern/pattern'
import { applyChanges } from '../../../src/words/compare/compare'
import { compared, messages, piece, repaired } from './helpers'

/** Six rounds of which no two are alike. */
const six = piece(['k*6', 'p*6', 'k*5, p', 'k*4, p*2', 'k*3, p*3', 'p, k*5'])

/** The words after the row left out is written into them, and what the button said. */
function writtenIn(pattern: Pattern, lines: readonly string[]) {
  const comparison = compared(pattern, lines)
  const [difference] = comparison.differences
  const fix = difference?.fixes.find((one) => 'changes' in one)
  if (!fix || !('changes' in fix)) throw new Error(`Nothing can be written: ${lines.join(' / ')}`)
  const text = applyChanges(comparison.reading.text, fix.changes)
  const after = repaired(comparison, fix)
  const mislabelled = after.pairs.filter(
    ({ read, pass }) =>
      read !== null &&
      pass !== null &&
      Number(after.reading.rows[read]?.label) !== after.work.passes[pass]?.number,
  )
  return { label: fix.label, lines: text.split('\n'), left: messages(after), mislabelled }
}

describe('a row written into words that were numbered without it', () => {
  it('has the rows after it numbered on, heads and references', () => {
    const pattern = piece(['k*6', 'p*6', 'k*5, p', 'k*4, p*2', 'k*4, p*2', 'k*5, p', 'p, k*5'])
    const found = writtenIn(pattern, [
      'Rnd 1: Knit. (6 sts)',
      'Rnd 2: k5, p1.',
      'Rnds 3-4: k4, p2.',
      'Rnd 5: As Rnd 2.',
      'Rnd 6: p1, k5.',
    ])
    expect(found).toEqual({
      label: 'Add Rnd 2 to the words, with new numbers after it',
      lines: [
        'Rnd 1: Knit. (6 sts)',
        'Rnd 2: Purl.',
        'Rnd 3: k5, p1.',
        'Rnds 4-5: k4, p2.',
        'Rnd 6: As Rnd 3.',
        'Rnd 7: p1, k5.',
      ],
      left: [],
      mislabelled: [],
    })
  })

  it('has ordinals and lists of numbers numbered on', () => {
    const pattern = piece(['k*6', 'p*6', 'k*5, p', 'k*4, p*2', 'k*5, p', 'k*6'])
    const { lines, left } = writtenIn(pattern, [
      '1st rnd: Knit.',
      'Rnds 2, 4: k5, p1.',
      '3rd rnd: k4, p2.',
      '5th rnd: as 1st rnd.',
    ])
    expect(lines.filter((line) => !/Purl/.test(line))).toEqual([
      '1st rnd: Knit.',
      'Rnds 3, 5: k5, p1.',
      '4th rnd: k4, p2.',
      '6th rnd: as 1st rnd.',
    ])
    expect(left).toEqual([])
  })

  it('has repeats of rows numbered on, and how often they are worked left alone', () => {
    const rows = ['k*6', 'p*6', 'k*5, p', 'k*4, p*2', 'p, k*5']
    const { lines, left, mislabelled } = writtenIn(setBand(piece(rows), 2, 3, 3), [
      'Rnd 1: Knit.',
      'Rnd 2: k5, p1.',
      'Rnd 3: k4, p2.',
      'Rep Rnds 2-3 twice more. (6 rnds in all)',
      'Rnd 8: p1, k5.',
    ])
    expect(lines).toEqual([
      'Rnd 1: Knit.',
      'Rnd 2: Purl.',
      'Rnd 3: k5, p1.',
      'Rnd 4: k4, p2.',
      'Rep Rnds 3-4 twice more. (6 rnds in all)',
      'Rnd 9: p1, k5.',
    ])
    expect([left, mislabelled]).toEqual([[], []])
  })

  it.each([
    'Rep Rnds 2-3 2 more times.',
    'Rep Rnds 2 and 3 2 times more.',
    'Rep last 2 rnds 2 more times.',
    'Rep these 2 rnds twice more.',
  ])('is told from a count: %s', (repeat) => {
    const rows = ['p*6', 'k*6', 'k*5, p', 'k*4, p*2', 'p, k*5']
    const pattern = setBand(piece(rows), 2, 3, 3)
    const { lines, left, mislabelled } = writtenIn(pattern, [
      'Rnd 1: Purl.',
      ...(repeat.includes('these') ? ['', 'Cuff'] : []),
      'Rnd 2: k5, p1.',
      'Rnd 3: k4, p2.',
      repeat,
      'Rnd 8: p1, k5.',
    ])
    expect(lines.slice(-2)).toEqual([
      repeat.replace(/Rnds 2(-| and )3/, 'Rnds 3$14'),
      'Rnd 9: p1, k5.',
    ])
    expect([left, mislabelled]).toEqual([[], []])
  })

  it('in a band has the rest of it numbered on, each time', () => {
    const pattern = setBand(piece(['k*6', 'p*6', 'k*5, p', 'p, k*5']), 0, 2, 3)
    const { lines, left, mislabelled } = writtenIn(pattern, [
      'Rnd 1: Knit.',
      'Rnd 2: k5, p1.',
      'Rep Rnds 1-2 twice more.',
      'Rnd 7: p1, k5.',
    ])
    expect(lines).toEqual([
      'Rnd 1: Knit.',
      'Rnd 2: Purl.',
      'Rnd 3: k5, p1.',
      'Rep Rnds 1-3 twice more.',
      'Rnd 10: p1, k5.',
    ])
    expect([left, mislabelled]).toEqual([[], []])
  })

  it('of any piece of rows that differ agrees with the chart in every number', () => {
    const rows = fc.uniqueArray(fc.integer({ min: 0, max: 63 }), { minLength: 2, maxLength: 9 })
    fc.assert(
      fc.property(rows, fc.nat(), (list, n) => {
        const stitches = list.map((bits) =>
          Array.from({ length: 6 }, (_, peg) => ((bits >> peg) & 1 ? 'p' : 'k')),
        )
        const said = stitches.map((row) => row.map((stitch) => `${stitch}1`).join(', '))
        const lines = said
          .toSpliced(n % said.length, 1)
          .map((sentence, index) => `Rnd ${index + 1}: ${sentence}.`)
        const found = writtenIn(piece(stitches.map((row) => row.join(', '))), lines)
        expect([found.left, found.mislabelled]).toEqual([[], []])
        expect(found.lines.map((line) => line.replace(/:.*/, ''))).toEqual(
          list.map((_, index) => `Rnd ${index + 1}`),
        )
      }),
      { numRuns: 150 },
    )
  })

  it('takes the chart’s numbers where more rows are left out further on', () => {
    const { label, lines, left, mislabelled } = writtenIn(six, [
      'Rnd 1: Knit.',
      'Rnd 2: k5, p1.',
      'Rnd 3: k3, p3.',
      'Rnd 4: p1, k5.',
    ])
    expect(label).toBe('Add Rnd 2 to the words, with new numbers after it')
    expect(lines).toEqual([
      'Rnd 1: Knit.',
      'Rnd 2: Purl.',
      'Rnd 3: k5, p1.',
      'Rnd 5: k3, p3.',
      'Rnd 6: p1, k5.',
    ])
    expect(left).toEqual(['Your words leave out Rnd 4.'])
    expect(mislabelled).toEqual([])
  })

  it('can be the first row', () => {
    const { lines } = writtenIn(piece(['k*6', 'p*6', 'k*5, p']), ['Rnd 1: Purl.', 'Rnd 2: k5, p1.'])
    expect(lines).toEqual(['Rnd 1: Knit.', 'Rnd 2: Purl.', 'Rnd 3: k5, p1.'])
  })

  it('changes no number when they agree already', () => {
    const { label, lines } = writtenIn(six, [
      'Rnd 1: Knit.',
      'Rnd 3: k5, p1.',
      'Rnd 4: k4, p2.',
      'Rnd 5: k3, p3.',
      'Rnd 6: p1, k5.',
    ])
    expect(label).toBe('Add Rnd 2 to the words')
    expect(lines.filter((line) => line !== 'Rnd 2: Purl.')).toHaveLength(5)
    expect(lines.map((line) => line.slice(0, 5))).toEqual(
      [1, 2, 3, 4, 5, 6].map((number) => `Rnd ${number}`),
    )
  })

  it('changes no number of a section that counts its own rows, and says so', () => {
    const own = [
      'Leg',
      'Rnd 1: Knit.',
      'Rnd 2: Purl.',
      '',
      'Toe',
      'Rnd 1: k5, p1.',
      'Rnd 2: k3, p3.',
      'Rnd 3: p1, k5.',
    ]
    const { label, lines, left } = writtenIn(six, own)
    expect(label).toBe('Add Rnd 4 to the words, with the same numbers after it')
    expect(lines.filter((line) => line !== 'Rnd 4: k4, p2.')).toEqual(own)
    expect(left).toEqual([])
  })

  it('stops numbering where a new section begins to count anew', () => {
    const { label, lines } = writtenIn(six, [
      'Leg',
      'Rnd 1: Knit.',
      'Rnd 2: k5, p1.',
      '',
      'Toe',
      'Rnd 1: k4, p2.',
      'Rnd 2: k3, p3.',
      'Rnd 3: p1, k5.',
    ])
    expect(label).toBe('Add Rnd 2 to the words, with new numbers after it')
    expect(lines).toEqual([
      'Leg',
      'Rnd 1: Knit.',
      'Rnd 2: Purl.',
      'Rnd 3: k5, p1.',
      '',
      'Toe',
      'Rnd 1: k4, p2.',
      'Rnd 2: k3, p3.',
      'Rnd 3: p1, k5.',
    ])
  })

  it('leaves numbers that every other row hangs on, and says so', () => {
    const pattern = piece(['k*6', 'k*5, p', 'p*6', 'k*4, p*2', 'p*6', 'k*3, p*3', 'p*6'])
    const { label, lines } = writtenIn(pattern, [
      'Rnd 1: k5, p1.',
      'Rnd 2 and all even rnds: Purl.',
      'Rnd 3: k4, p2.',
      'Rnd 5: k3, p3.',
    ])
    expect(label).toBe('Add Rnd 1 to the words, with the same numbers after it')
    expect(lines).toContain('Rnd 2 and all even rnds: Purl.')
  })
})
