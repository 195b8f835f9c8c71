import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workPattern } from '../../../src/pattern/work'
import { plainText } from '../../../src/words/text'
import { read } from '../../../src/words/read/read'
import { readSettingsOf, type Reading } from '../../../src/words/read/reading'
import { usual as settings } from './cases'
import { workable } from './workable'

/** What a reading says, with its stitches by name. */
const saidBy = ({ rows, remarks, bands, sections, stated, tokens }: Reading) => ({
  rows: rows.map((row) => ({
    ...row,
    stitches: row.stitches.map(({ stitch, range }) => [stitch.id, range.from, range.to]),
  })),
  remarks,
  bands,
  sections,
  stated,
  tokens,
})

describe('reading again after an edit', () => {
  it('says what a fresh reading says', () => {
    const edit = fc.tuple(
      fc.nat(3000),
      fc.nat(8),
      fc.constantFrom(
        '',
        ' ',
        'k',
        'p2, ',
        '\n',
        '(',
        ')',
        '2',
        '* ',
        'Rnd 3: knit\n',
        'LC = 3/1 LC\n',
      ),
    )
    fc.assert(
      fc.property(workable, fc.array(edit, { maxLength: 8 }), (pattern, edits) => {
        const how = readSettingsOf(pattern)
        let text = plainText(workPattern(pattern))
        let reading = read(text, how)
        for (const [at, count, put] of edits) {
          const from = at % (text.length + 1)
          text = text.slice(0, from) + put + text.slice(from + count)
          reading = read(text, how, reading)
          expect(saidBy(reading)).toEqual(saidBy(read(text, how)))
        }
      }),
      { numRuns: 200 },
    )
  })

  it('keeps the rows of lines that stand where they stood', () => {
    const lines = [
      'Rnd 1: *k2, p2; rep from * to end.',
      'Rnd 2: knit',
      'Rnd 3: purl',
      'Rnd 4: knit',
    ]
    const first = read(lines.join('\n'), settings)
    const second = read(lines.with(2, 'Rnd 3: k23, p1').join('\n'), settings, first)
    expect(second.rows.map((row, index) => row === first.rows[index])).toEqual([
      true,
      true,
      false,
      false,
    ])
  })

  it('takes nothing from a reading for another loom', () => {
    const first = read('Rnd 1: knit', settings)
    expect(read('Rnd 1: knit', { ...settings, pegs: 30 }, first).rows[0]?.takes).toBe(30)
    const sized = read('Rnd 1: k24 (30), p0 (6)', { ...settings, pegs: 36 }, first)
    const other = read('Rnd 1: k24 (30), p0 (6)', { ...settings, pegs: 36, size: 1 }, sized)
    expect(other.rows[0]?.takes).toBe(36)
  })
})
