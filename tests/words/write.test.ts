import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workPattern } from '../../src/pattern/work'
import type { Pattern } from '../../src/pattern/pattern'
import { addStep } from '../../src/pattern/edits/piece'
import { setBand } from '../../src/pattern/edits/rows'
import { termSets, type Terms } from '../../src/languages/terms'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { abbreviations } from '../../src/words/abbreviations'
import { read } from '../../src/words/read/read'
import { readSettingsOf } from '../../src/words/read/reading'
import { statements, cautions } from '../../src/words/statements'
import { plainText } from '../../src/words/text'
import { writeWords } from '../../src/words/write'
import { arbitraryOneChart } from '../arbitraries'
import { editedPiece } from '../edits'
import { linesOf, pieceOf, rowOf } from './helpers'
import { copyOf } from '../cells'

const rib = '(k*2, p*2)*6'
const twelve = () => {
  const rows = [rib, 'k*24', '(k, p)*12', 'p*24', '(ew, p)*12', '(p*2, k*2)*6']
  return pieceOf([...rows, ...rows].map((cells) => rowOf(cells)))
}
const withRow = (pattern: Pattern, index: number, cells: string): Pattern =>
  withChart(pattern, {
    rows: chartOn(pattern).rows.map((row, at) => (at === index ? rowOf(cells) : row)),
  })

describe('the lines of a chart', () => {
  it('stay the same objects where an edit changes nothing', () => {
    const before = workPattern(twelve())
    const after = workPattern(withRow(before.pattern, 3, 'p*20, k*4'), before)
    const words = writeWords(before, 'us')
    const [old, now] = [words.lines, writeWords(after, 'us', words).lines]
    expect(old).toHaveLength(12)
    const changed = now.flatMap((line, index) => (line === old[index] ? [] : [index]))
    expect(changed).toEqual([3])
  })

  it('change where they name an edited row', () => {
    const before = workPattern(twelve())
    const after = workPattern(withRow(before.pattern, 0, '(k*3, p)*6'), before)
    const words = writeWords(before, 'us')
    const lines = writeWords(after, 'us', words).lines.map(({ text }) => text)
    expect(lines[0]).toBe('Rnd 1: *k3, p1; rep from * to end. (24 sts)')
    expect(words.lines[6]?.text).toBe('Rnd 7: As Rnd 1.')
    expect(lines[6]).toBe('Rnd 7: *k2, p2; rep from * to end.')
  })

  it('are the lines of a fresh start after any edits', () => {
    fc.assert(
      fc.property(editedPiece(), fc.constantFrom(...termSets), ([first, edits], terms) => {
        let work = workPattern(first)
        let words = writeWords(work, terms)
        for (const edit of edits) {
          work = workPattern(edit(work.pattern), work)
          words = writeWords(work, terms, words)
          // A copy shares no row with what is remembered, so that nothing can be taken from there.
          const fresh = writeWords(workPattern(copyOf(work.pattern)), terms)
          expect(words.lines).toEqual(fresh.lines)
          expect(words.starts).toEqual(fresh.starts)
        }
      }),
      { numRuns: 400 },
    )
  })

  it('stay right when rows that others name change', () => {
    const cells = fc.constantFrom(rib, 'k*24', 'p*24', '(k, p)*12', 'k2tog*2, yo*2, k*20')
    const rows = fc.array(cells, { minLength: 2, maxLength: 12 })
    const edits = fc.array(fc.tuple(fc.nat(11), cells), { maxLength: 12 })
    fc.assert(
      fc.property(rows, edits, fc.boolean(), (list, changes, band) => {
        const piece = pieceOf(list.map((row) => rowOf(row)))
        let work = workPattern(band ? setBand(piece, 0, list.length >> 1, 3) : piece)
        let words = writeWords(work, 'us')
        for (const [at, row] of changes) {
          work = workPattern(withRow(work.pattern, at % list.length, row), work)
          words = writeWords(work, 'us', words)
          const fresh = writeWords(workPattern(copyOf(work.pattern)), 'us')
          expect(words.lines).toEqual(fresh.lines)
        }
      }),
      { numRuns: 400 },
    )
  })

  it('stand for every row of the chart, in order', () => {
    fc.assert(
      fc.property(arbitraryOneChart(), (pattern) => {
        const { lines } = writeWords(workPattern(pattern), 'uk')
        const rows = new Set<number>()
        for (const { rows: run, kind, label, text } of lines) {
          expect(text.startsWith(label)).toBe(true)
          if (kind === 'row') for (let row = run.from; row <= run.to; row++) rows.add(row)
        }
        expect([...rows]).toEqual(chartOn(pattern).rows.map((_, row) => row))
      }),
      { numRuns: 150 },
    )
  })

  it('give each set of terms its own words', () => {
    const pattern = pieceOf([rowOf('(2/2 LC, yo, ssk)*4')])
    const work = workPattern(pattern)
    expect(writeWords(work, 'us').lines[0]?.text).toContain('*2/2 LC, yo, ssk;')
    expect(writeWords(work, 'uk').lines[0]?.text).toContain('*C4F, yo, skpo;')
  })
})

describe('abbreviations', () => {
  it('are exactly those of the stitches worked, in the order of the vocabulary, then the words', () => {
    const pattern = pieceOf([rowOf('(2/2 LC, p*2)*4'), rowOf('(yo, ssk, p*4)*4')])
    const list = abbreviations(workPattern(pattern), 'us')
    expect(list.map(({ abbr }) => abbr)).toEqual([
      'p',
      'yo',
      'ssk',
      '2/2 LC',
      'rnd(s)',
      'rep',
      'st(s)',
    ])
  })

  it('name no word that is not used', () => {
    const pattern = pieceOf([rowOf('k*12')])
    const flat: Pattern = { ...pattern, loom: { ...pattern.loom, shape: 'bar' } }
    expect(abbreviations(workPattern(flat), 'uk').map(({ abbr }) => abbr)).toEqual(['k', 'st(s)'])
  })

  it('hold every stitch once for any pattern, in the order of the vocabulary', () => {
    fc.assert(
      fc.property(arbitraryOneChart(), (pattern) => {
        const work = workPattern(pattern)
        const used = new Set(work.run.rows.flatMap(({ row }) => row.sites.map((s) => s.stitch)))
        const listed = abbreviations(work, 'us').flatMap(({ stitch }) => stitch ?? [])
        expect(listed).toHaveLength(used.size)
        expect(new Set(listed)).toEqual(used)
        const places = listed.map((stitch) =>
          standardVocabulary.stitches.indexOf(stitch.cut?.of ?? stitch),
        )
        expect(places).toEqual(places.toSorted((a, b) => a - b))
      }),
      { numRuns: 80 },
    )
  })

  it('tell a cross that is worked both ways for both', () => {
    const cross = rowOf('k*4, 2/2 LC, k*4')
    const pattern = pieceOf([cross, { ...cross }])
    const flat: Pattern = { ...pattern, loom: { ...pattern.loom, shape: 'bar' } }
    const stepsIn = (one: Pattern) =>
      abbreviations(workPattern(one), 'us').find(({ stitch }) => stitch?.cross)?.steps
    const both = stepsIn(flat)
    expect(both).toMatch(
      /^Worked right to left\. Over 4 pegs, .* Worked left to right\. Over 4 pegs, /,
    )
    const once = stepsIn(pattern)
    expect(once).toMatch(/^Over 4 pegs, counted in the order you work them: /)
  })
})

describe('statements', () => {
  const piece = (direction: 'clockwise' | 'counterclockwise', cells = 'k*12') => {
    const pattern = pieceOf([rowOf(cells)])
    return { ...pattern, loom: { ...pattern.loom, direction } }
  }

  const said = (pattern: Pattern, terms: Terms = 'us') =>
    statements(pattern, [chartOn(pattern)], terms)

  it('say which way the work goes', () => {
    expect(said(piece('clockwise'))[0]).toBe(
      'Worked clockwise round the loom seen from above: right to left as you face it.',
    )
    expect(said(piece('counterclockwise'), 'us')[0]).toBe(
      'Worked counterclockwise round the loom seen from above: left to right as you face it.',
    )
    expect(said(piece('counterclockwise'), 'uk')[0]).toMatch(/^Worked anticlockwise /)
  })

  it('say what k means', () => {
    expect(said(piece('clockwise'))).toContain('k means u-wrap knit in this pattern.')
  })

  it('tell the habit for crosses and decreases only where there are any', () => {
    expect(said(piece('clockwise'))).toHaveLength(3)
    expect(said(piece('clockwise', '2/2 LC*3')).at(-1)).toMatch(/^Crosses: /)
    expect(said(piece('clockwise', '(k2tog, yo)*6')).at(-1)).toMatch(/^Decreases: /)
  })

  it('print cautions on things for babies and children only', () => {
    const pattern = piece('clockwise')
    expect(cautions(pattern, [])).toEqual([])
    const forBaby = { ...pattern, making: { ...pattern.making, forBaby: true } }
    expect(cautions(forBaby, []).join(' ')).toMatch(/catch fingers and toes.*local rules/)
  })
})

describe('the whole text', () => {
  it('has its sections in order and says everything once', () => {
    const pattern: Pattern = {
      ...pieceOf([rowOf(rib), rowOf(rib)]),
      title: 'Harbour wristlet',
      designer: 'A. Weaver',
      notes: 'Gather the cast-on edge at the end.',
      gauge: { stitches: 18, rows: 26 },
    }
    const text = plainText(workPattern(pattern), 'uk')
    expect(text.split('\n\n').map((section) => section.split('\n')[0])).toEqual([
      'Harbour wristlet',
      'How it is worked',
      'Abbreviations',
      'Notes',
      'Instructions',
      'Finishing',
    ])
    // The edges are named as those of a whole piece are, and a gauge with its stitch (common practice).
    expect(text).toContain('Tension: 18 sts and 26 rows to 10 cm (4 in) in u-wrap knit.')
    expect(text).toContain('Cast on 24 pegs by e-wrap, in the round.')
    expect(text).toContain('Cast off all stitches with the basic cast-off and weave in the ends.')
    for (const line of linesOf(pattern)) expect(text.split(line)).toHaveLength(2)
    const { stated, remarks } = read(text, readSettingsOf(pattern))
    expect(stated).toMatchObject({ knit: 'u-wrap', pegs: 24, gauge: pattern.gauge })
    expect(remarks).toEqual([])
  })

  it('of a section of a larger piece says nothing of its edges', () => {
    const pattern = addStep(pieceOf([rowOf(rib)]), 1, {
      kind: 'plain',
      stitch: stitchOf('k'),
      amount: { rows: 3 },
    })
    expect(plainText(workPattern(pattern))).not.toMatch(/Cast on|Bind off/)
  })
})
