import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import fontWidths from '../../../src/booklet/page/fontWidths.json'
import {
  breakLines,
  faceRuns,
  lettersMissing,
  missingLetter,
  widthOf,
} from '../../../src/booklet/page/text'
import { fontFiles, makeTable, readWidths } from '../readFont'

// The font files themselves are the reference for every width.
describe('measuring', () => {
  test('the table is what the font files say', () => {
    expect(fontWidths).toEqual(makeTable())
  })

  test.each(['regular', 'bold'] as const)('%s: a line is as wide as its letters', (weight) => {
    const widths = readWidths(fontFiles[weight])
    const text = '*k2, p2; rep from * to end. (36 sts)'
    const sum = [...text].reduce((total, letter) => {
      return total + (widths.get(letter.charCodeAt(0)) ?? NaN)
    }, 0)
    expect(widthOf(text, 4, weight)).toBeCloseTo((4 * sum) / 1000, 9)
  })
})

describe('letters that the font does not have', () => {
  test('are written in the other font, the rest stays in its own', () => {
    expect(faceRuns('Ärmel Жук 2', 'bold')).toEqual([
      { face: 'bold', text: 'Ärmel ' },
      { face: 'fallback', text: 'Жук' },
      { face: 'bold', text: ' 2' },
    ])
  })

  test('are told, and shown as an empty box, when no font has them', () => {
    expect(lettersMissing('編み目 編')).toEqual(['編', 'み', '目'])
    expect(faceRuns('k編', 'regular')).toEqual([
      { face: 'regular', text: 'k' },
      { face: 'fallback', text: missingLetter },
    ])
    expect(lettersMissing(`${missingLetter} Cuff, Ärmel, Жук, λ`)).toEqual([])
  })
})

describe('breaking lines', () => {
  const word = fc.string({ unit: 'binary-ascii', minLength: 1, maxLength: 30 })
  const text = fc.array(word, { maxLength: 60 }).map((words) => words.join(' '))
  const measure = fc.double({ min: 20, max: 180, noNaN: true })

  test('no line is wider than the measure', () => {
    fc.assert(
      fc.property(text, measure, (words, width) => {
        for (const line of breakLines(words, width, 4))
          expect(widthOf(line, 4)).toBeLessThanOrEqual(width + 1e-9)
      }),
    )
  })

  test('no letter is lost or moved', () => {
    const bare = (s: string) => s.replace(/\s/gu, '')
    fc.assert(
      fc.property(text, measure, (words, width) => {
        expect(bare(breakLines(words, width, 4).join(''))).toBe(bare(words))
      }),
    )
  })

  test('a line is as full as it can be', () => {
    const words = 'k2 p2 '.repeat(40).trim()
    const lines = breakLines(words, 60, 4)
    expect(lines.length).toBeGreaterThan(2)
    for (const line of lines.slice(0, -1)) expect(widthOf(`${line} k2`, 4)).toBeGreaterThan(60)
  })

  test('a count stays beside its unit', () => {
    for (let measure = 20; measure < 70; measure++)
      expect(breakLines('knit to the end (24 sts)', measure, 4).join('|')).not.toContain('24|')
  })
})
