import { setWords } from '../../../src/pattern/edits/words'
import { namedOn } from '../../../src/pattern/charts'
import { describe, expect, it } from 'vitest'
import { limits } from '../../../src/pattern/pattern'
import { readFile, writeFile } from '../../../src/shelf/format'
import { starterCharts } from '../../../src/shelf/seeds'
import { sizesIn } from '../../../src/words/read/lines/sizesIn'
import { readLimits } from '../../../src/words/read/limits'
import { read } from '../../../src/words/read/read'
import { usual } from './cases'

const rulesOf = (text: string): string[] => read(text, usual).remarks.map(({ rule }) => rule)

describe('numbers of a text', () => {
  it.each([
    ['times of a section', 'Cuff\nRnd 1: knit\nWork Cuff again, 999999999 times.'],
    ['times of a repeat of rows', 'Rnd 1: knit\nRep Rnd 1 999999999 times more.'],
    ['rows until they are worked', 'Rnd 1: knit\nRep Rnd 1 until 999999999 rnds are worked.'],
    ['rows of a fabric', 'Next 99999 rnds: garter stitch for 99999 rnds.'],
  ])('end at the rows there can be: %s', (_, text) => {
    const reading = read(text, usual)
    expect(reading.rows).toHaveLength(readLimits.rows)
    expect(reading.remarks.map(({ message }) => message)).toContain(
      'The text goes on for more than 5,000 rows; the rest is left out.',
    )
  })

  it('that name rows end at the rows of a line', () => {
    const reading = read('Rnds 1-99999: knit', usual)
    expect(reading.rows).toHaveLength(readLimits.rowsInLine)
    expect(reading.remarks.map(({ message }) => message)).toEqual([
      '"Rnds 1-99999" names more than 2,000 rows; the rest is left out.',
    ])
  })

  it('are named with the limit once they are too large, wherever they stand', () => {
    expect(rulesOf('Rnd 1: knit\nRep last 1000000 rnds twice more.')).toContain('too-large')
    expect(rulesOf('Rnd 1: knit (100000 sts)')).toEqual(
      expect.arrayContaining(['stated-count', 'too-large']),
    )
    expect(rulesOf('Rnd 1: knit (24 sts)')).toEqual([])
  })
})

it.each([
  'Rnd 1: k36.\nRnds 3-999999999: knit.\nRnd 4: k36.',
  'Rnds 3-999999999: knit.',
  'Rnd 1: k36.\nRnd 400000000000: p36.',
  'Rnd 1: k36.\nNext 12345678901 rnds: knit.',
])('Rows with numbers that are too large are named, and never left out in silence: %j', (text) => {
  const { rows } = read(text, usual)
  expect(rulesOf(text)).toContain('too-large')
  expect(rows.length).toBeGreaterThan(1)
})

it('What a line names beyond the limits is told at its first row, with its head', () => {
  const { remarks, rows } = read('Rnd 1: k36.\nRnds 3-99999: knit.\nRnd 7: k999999.', usual)
  const told = remarks.filter(({ rule }) => rule === 'too-long' || rule === 'too-large')
  expect(told.map(({ rule, row }) => [rule, row === null ? null : rows[row]?.label])).toEqual(
    expect.arrayContaining([
      ['too-long', '3'],
      ['too-large', '7'],
    ]),
  )
  expect(told.map(({ message }) => message)).toContain(
    '"Rnds 3-99999" names more than 2,000 rows; the rest is left out.',
  )
})

it('A list has as many sizes as a piece can be read in', () => {
  const list = (count: number): string =>
    `k24 (${Array.from({ length: count - 1 }, (_, index) => 25 + index).join(', ')})`
  expect(sizesIn(list(limits.sizes.most))).toBe(limits.sizes.most)
  expect(sizesIn(list(limits.sizes.most + 1))).toBe(1)
})

it('Own words with such numbers are kept in a file and read again', () => {
  const [{ pattern }] = starterCharts
  const words =
    'Rnd 1: k*9 999999999 pegs\nRnd 2: k2 Rnd 1-999999999: tog\nRnd 3: k5000 (9999999 sts)'
  const again = readFile(writeFile(setWords(pattern(), words)))
  if (!again.ok) throw new Error(again.message)
  expect(namedOn(again.pattern).words).toBe(words)
  expect(read(namedOn(again.pattern).words ?? '', usual).rows.length).toBeGreaterThan(0)
})
