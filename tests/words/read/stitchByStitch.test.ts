import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { termSets } from '../../../src/languages/terms'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { read } from '../../../src/words/read/read'
import { usual as settings } from './cases'
import { termOf } from '../../../src/languages/languages'

const stitches = fc.array(fc.constantFrom(...standardVocabulary.stitches), {
  minLength: 2,
  maxLength: 60,
})

describe('a row told stitch by stitch', () => {
  it('is read stitch by stitch, each at its own words', () => {
    fc.assert(
      fc.property(stitches, fc.constantFrom(...termSets), (list, terms) => {
        const said = list.map((stitch) => termOf(stitch, terms).abbr)
        const text = `Cuff\nRnd 1: ${said.join(', ')}.`
        const { rows, remarks } = read(text, { ...settings, terms })
        const worked = rows.at(-1)?.stitches ?? []
        expect(worked.map(({ stitch }) => stitch.id)).toEqual(list.map(({ id }) => id))
        expect(worked.map(({ range }) => text.slice(range.from, range.to))).toEqual(said)
        expect(remarks.filter(({ rule }) => rule === 'unknown-word')).toEqual([])
      }),
    )
  })

  it('has one object for one word, however often it is worked', () => {
    const text = 'Rnd 1: k, *k2, p; rep from * to last 2 sts, p, k.'
    const worked = read(text, settings).rows[0]?.stitches ?? []
    const words = ['k', 'k2', 'p', 'p', 'k']
    const objects = [...new Set(worked)]
    expect(worked.length).toBe(settings.pegs)
    expect(objects.map(({ range }) => text.slice(range.from, range.to))).toEqual(words)
    const again = worked.slice(1, -2)
    expect(again.every((one, i) => one === objects[i % 3 === 2 ? 2 : 1])).toBe(true)
  })
})
