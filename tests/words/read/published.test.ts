/** Worked examples from knitting books of 1843 to 1918; see tests/published/data for the places. */
import { describe, expect, it } from 'vitest'
import { read } from '../../../src/words/read/read'
import type { ReadSettings } from '../../../src/words/read/reading'
import { shapings, shortRows, type ShortRows } from '../../published/data/short-rows'
import { readExamples, stitchesOf } from '../../published/examples'
import { inWords, wordsOf } from './wording'

const address = new URL('../../published/data/worked-examples.json', import.meta.url)
const examples = readExamples(address)
const named = (kind: string) =>
  examples.filter((one) => one.kind === kind).map((one) => [one.id, one] as const)

const settings = (pegs: number, flat: boolean): ReadSettings => ({
  shape: flat ? 'bar' : 'ring',
  pegs,
  direction: 'clockwise',
  knit: 'u-wrap',
  terms: 'us',
  size: 0,
  needles: false,
})

const errorsIn = ({ remarks }: ReturnType<typeof read>) =>
  remarks.filter(({ severity }) => severity === 'error')

describe('rows of printed books in the wording of today', () => {
  it.each(named('positive'))('%s is read stitch by stitch, with the counts', (_, example) => {
    const { text, pegs, flat, rows } = wordsOf(example)
    const reading = read(text, settings(pegs, flat))
    expect(reading.remarks).toEqual([])
    expect(reading.rows).toHaveLength(rows.length)
    reading.rows.forEach((row, index) => {
      const given = rows[index]
      if (!given) throw new Error('There is a row too many.')
      const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id)
      expect(ids(row.stitches.map(({ stitch }) => stitch))).toEqual(ids(stitchesOf(example, given)))
      if (given.sts_before !== undefined)
        expect([row.before, row.after]).toEqual([given.sts_before, given.sts_after])
    })
  })

  it.each(named('negative'))('%s is caught in the rows that its note names', (_, example) => {
    const { text, pegs, flat, rows } = wordsOf(example)
    // What is wrong in the book is not what a count after it would say.
    const asPrinted = text.replace(/ \((?:38|60) sts\)/, '')
    const reading = read(asPrinted, settings(pegs, flat))
    const wrong = errorsIn(reading).map(({ row }) => rows[row ?? -1]?.row)
    expect([...new Set(wrong)]).toEqual(example.wrong_rows)
    expect(errorsIn(reading)).toHaveLength(example.wrong_rows?.length ?? 0)
  })

  it('says with numbers that the ribs of 63 do not meet', () => {
    const ermine = examples.find(({ id }) => id === 'NEG-ermine-rib')
    if (!ermine) throw new Error('The example is missing.')
    const { text } = wordsOf(ermine)
    const [error] = errorsIn(read(text.replace(' (60 sts)', ''), settings(63, false)))
    expect(error?.message).toBe(
      'Rnd 1: the repeat is 6 sts and 63 is not a multiple of 6: 10 repeats leave 3 sts.',
    )
    expect(error?.pegs).toEqual({ from: 60, to: 62 })
  })
})

function shortRowText({ rows, startsAfter = 0 }: ShortRows): string {
  return rows
    .map((row, index) => {
      const turn = row.endsWith('k*') ? '' : ', turn'
      const [first = 0] = /\d+/.exec(row)?.map(Number) ?? []
      const pegs =
        index === 0 && startsAfter > 0 ? `Pegs ${startsAfter + 1} to ${startsAfter + first}: ` : ''
      return `Row ${index + 1}: ${pegs}${inWords(row)}${turn}.`
    })
    .join('\n')
}

describe('short rows of printed books', () => {
  it.each(shortRows.map((one) => [one.id, one] as const))('%s turns where it should', (_, one) => {
    const reading = read(shortRowText(one), settings(one.castOn, true))
    expect(errorsIn(reading)).toEqual([])
    const unworked = reading.rows.map(({ covers, goes }) =>
      !covers ? null : goes === 'forward' ? one.castOn - 1 - covers.to : covers.from,
    )
    // On the needles emptied places close up; pegs that were emptied stay where they are.
    if (!one.loops) expect(unworked).toEqual(one.unworked)
    else expect(reading.rows.map(({ after }) => after)).toEqual(one.loops)
  })

  it.each(shapings.map((one) => [one.id, one] as const))('%s comes to its counts', (_, one) => {
    const counts = new Map(one.stated)
    const text = one.rows
      .map((row, index) => {
        const count = counts.get(index + 1)
        return `Row ${index + 1}: ${inWords(row)}.${count === undefined ? '' : ` (${count} sts)`}`
      })
      .join('\n')
    const reading = read(text, settings(one.castOn, true))
    expect(reading.remarks).toEqual([])
    for (const [row, loops] of one.stated) expect(reading.rows[row - 1]?.after).toBe(loops)
  })
})
