import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { placed } from '../../src/pattern/row'
import { termSets } from '../../src/languages/terms'
import { standardVocabulary } from '../../src/stitches/vocabulary'
import { writeRow } from '../../src/words/sentence'
import { isCounted } from '../../src/words/tokens'
import { arbitraryCells } from '../arbitraries'
import { expandSentence } from './expand'
import { firstRun, pieceOf, rowOf, sentenceOf } from './helpers'
import { languages, termOf } from '../../src/languages/languages'

/** Rows of a few stitches, so that there is much to shorten. */
const few = (names: readonly string[]) =>
  standardVocabulary.stitches.filter(({ id }) => names.includes(id))
const lists = [
  few(['k', 'p']),
  few(['k', 'p', 'ew', 'sl']),
  few(['k', 'k2tog', 'yo']),
  few(['k', 'p', '2/2 LC', '1/1 RC']),
  few(['k', 'none', 'kfb', 'cdd', 'yo']),
]
const anyStitches = fc.constantFrom(...lists, standardVocabulary.stitches)
const aperiodic = fc
  .tuple(anyStitches, fc.integer({ min: 3, max: 60 }))
  .chain(([stitches, columns]) => arbitraryCells(columns, stitches))

/** Edges, a block that may hold another repeated, edges: nested repeats. */
const periodic = anyStitches
  .chain((stitches) => {
    const some = (most: number) =>
      fc.integer({ min: 0, max: most }).chain((columns) => arbitraryCells(columns, stitches))
    return fc.tuple(some(5), some(4), some(4), fc.integer({ min: 1, max: 5 }), some(6))
  })
  .chain(([before, outer, inner, copies, after]) => {
    const times = (list: readonly string[], count: number) =>
      Array.from({ length: count }, () => list).flat()
    return fc
      .integer({ min: 1, max: 6 })
      .map((all) => [...before, ...times([...outer, ...times(inner, copies)], all), ...after])
  })
  .filter((cells) => cells.length >= 3 && cells.length <= 400)

const rows = fc.oneof(aperiodic, periodic)
const stitchIds = (cells: readonly string[]) => placed(rowOf(cells)).map(({ stitch }) => stitch.id)

describe('the sentence of a row', () => {
  it('reads back as exactly the stitches of the row', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(...termSets), (cells, terms) => {
        const run = firstRun(pieceOf([rowOf(cells)]))
        const sentence = writeRow(run, 'ring', terms)
        const read = expandSentence(sentence, run.loops, terms)
        expect(read, sentence).toEqual(stitchIds(cells))
      }),
      { numRuns: 1500 },
    )
  })

  it('reads backwards where the row is worked back', () => {
    fc.assert(
      fc.property(rows, (cells) => {
        const run = firstRun(pieceOf([rowOf(cells, { heading: 'back' })]))
        const sentence = writeRow(run, 'ring', 'us')
        expect(sentence).toMatch(new RegExp(`^Pegs ${cells.length} to 1: `))
        expect(expandSentence(sentence, run.loops, 'us')).toEqual(stitchIds(cells).reverse())
      }),
      { numRuns: 300 },
    )
  })

  it('says "to end" only where the row comes out', () => {
    fc.assert(
      fc.property(rows, (cells) => {
        const run = firstRun(pieceOf([rowOf(cells)]))
        if (run.miscount) expect(writeRow(run, 'ring', 'us')).not.toContain('*')
        else expect(run.loops).toBe(run.row.takes)
      }),
      { numRuns: 300 },
    )
  })

  it('is kept as long as the row is', () => {
    const row = rowOf('(k*2, p*2)*9')
    const [first, second] = [pieceOf([row]), pieceOf([row], { notes: 'another version' })]
    expect(firstRun(first).row).toBe(firstRun(second).row)
    expect(writeRow(firstRun(first), 'ring', 'us')).toBe(writeRow(firstRun(second), 'ring', 'us'))
  })
})

describe('every stitch of the vocabulary', () => {
  it.each(termSets)('has an abbreviation of its own, %s', (terms) => {
    const abbreviations = standardVocabulary.stitches.map((stitch) => termOf(stitch, terms).abbr)
    expect(new Set(abbreviations).size).toBe(standardVocabulary.stitches.length)
  })

  it.each(termSets)('has no spelling that another stitch is written by, %s', (terms) => {
    for (const stitch of standardVocabulary.stitches) {
      const { abbr } = termOf(stitch, terms)
      const written = isCounted(stitch, terms) ? [`${abbr}1`, `${abbr}2`, `${abbr}3`] : [abbr]
      for (const other of standardVocabulary.stitches)
        if (other !== stitch)
          for (const word of written)
            expect(languages[terms].also(other), `${other.id} or ${abbr}`).not.toContain(word)
    }
  })

  it.each(standardVocabulary.stitches.map((stitch) => [stitch.id, stitch] as const))(
    '%s can be written and read, once and several times',
    (id, { width }) => {
      const cells = [id, ...Array.from({ length: width - 1 }, () => '')]
      const row = ['ew', ...cells, 'ew', ...cells, ...cells, ...cells, 'ew']
      for (const terms of termSets) {
        const run = firstRun(pieceOf([rowOf(row)]))
        const read = expandSentence(sentenceOf(row, terms), run.loops, terms)
        expect(read).toEqual(['ew', id, 'ew', id, id, id, 'ew'])
      }
    },
  )
})
