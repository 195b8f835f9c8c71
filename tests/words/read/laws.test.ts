import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { directions } from '../../../src/loom/direction'
import { shapes, type Pattern } from '../../../src/pattern/pattern'
import { termSets } from '../../../src/languages/terms'
import type { Stitch } from '../../../src/stitches/stitch'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { workPattern } from '../../../src/pattern/work'
import { plainText } from '../../../src/words/text'
import { writeWords } from '../../../src/words/write'
import { chartFrom } from '../../../src/words/read/chart/chartFrom'
import { read } from '../../../src/words/read/read'
import { readSettingsOf } from '../../../src/words/read/reading'
import { pieceOf, rowOf } from '../helpers'
import { cellsOf } from '../../arbitraries'
import { overfull, workable } from './workable'

/** What is worked, peg by peg, whatever the chart looks like. */
const workedRows = (pattern: Pattern) =>
  workPattern(pattern).run.rows.map(({ row, heading }) => ({
    sites: row.sites.map(({ stitch, peg }) => `${peg}: ${stitch.id}`),
    pegs: [row.from, row.to],
    heading,
    end: row.end,
  }))

const settled = (text: string, pattern: Pattern) => {
  const reading = read(text, readSettingsOf(pattern))
  const errors = reading.remarks.filter(({ severity }) => severity === 'error')
  return { reading, errors, chart: chartFrom(reading, pattern) }
}

describe('words written from a chart, read', () => {
  it('are the chart, line by line', () => {
    fc.assert(
      fc.property(workable, (pattern) => {
        const { lines } = writeWords(workPattern(pattern), pattern.style.terms)
        const text = lines.map((line) => line.text).join('\n')
        const { reading, errors, chart } = settled(text, pattern)
        expect(errors, text).toEqual([])
        expect(workedRows(chart.pattern), text).toEqual(workedRows(pattern))
        const bands = lines.filter(({ kind }) => kind === 'repeat').length
        expect(reading.bands.length).toBe(bands)
        expect(chartOn(chart.pattern).bands.length).toBe(bands)
        expect(chart.remarks).toEqual([])
      }),
      { numRuns: 1000 },
    )
  })

  it('are the chart where a plain row takes more loops than there are', () => {
    let short = 0
    fc.assert(
      fc.property(overfull, (pattern) => {
        const work = workPattern(pattern)
        const text = writeWords(work, pattern.style.terms)
          .lines.map((line) => line.text)
          .join('\n')
        const { errors, chart } = settled(text, pattern)
        const miscounted = work.run.rows.filter(({ miscount }) => miscount !== null).length
        short += miscounted
        expect(
          errors.map(({ rule }) => rule),
          text,
        ).toEqual(Array.from({ length: miscounted }, () => 'row-count'))
        expect(workedRows(chart.pattern), text).toEqual(workedRows(pattern))
      }),
      { numRuns: 500 },
    )
    expect(short).toBeGreaterThan(50)
  })

  it('are the chart when they stand in the whole text with its sections', () => {
    fc.assert(
      fc.property(workable, (pattern) => {
        const named = { ...pattern, title: 'Harbour wristlet', notes: 'Use the thin yarn.' }
        const text = plainText(workPattern(named))
        const { reading, errors, chart } = settled(text, named)
        expect(errors, text).toEqual([])
        expect(workedRows(chart.pattern), text).toEqual(workedRows(pattern))
        expect(reading.stated).toEqual({
          direction: reading.settings.shape === 'ring' ? pattern.loom.direction : undefined,
          knit: pattern.making.knit,
          pegs: pattern.loom.pegs,
          title: 'Harbour wristlet',
        })
      }),
      { numRuns: 300 },
    )
  })

  it.each(standardVocabulary.stitches.map((stitch) => [stitch.id, stitch] as const))(
    'name %s',
    (_, stitch) => {
      for (const terms of termSets)
        for (const direction of directions)
          for (const shape of shapes) {
            const pattern = pieceWith(stitch)
            const { loom, style } = pattern
            const piece: Pattern = {
              ...pattern,
              loom: { ...loom, shape, direction },
              style: { ...style, terms },
            }
            const text = plainText(workPattern(piece))
            const { errors, chart } = settled(text, piece)
            expect(errors, text).toEqual([])
            expect(workedRows(chart.pattern), text).toEqual(workedRows(piece))
          }
    },
  )
})

it('an abbreviation that gives a stitch its own name makes no other stitch of it', () => {
  const text = 'Abbreviations\nsl wyif: slip, yarn in front.\n\nInstructions\nRnd 1: k2, sl wyif.'
  const { rows } = read(text, readSettingsOf(pieceOf([rowOf('k*3')])))
  expect(rows[0]?.stitches.map(({ stitch }) => stitch.id)).toEqual(['k', 'k', 'slf'])
})

/** Two rows with a stitch twice, and what else all loops of all pegs need. */
function pieceWith(stitch: Stitch): Pattern {
  const pegs = 24
  const room = pegs - 2 * stitch.width
  const more = pegs - 2 * stitch.takes - room
  const fill = (id: string, count: number) => Array.from({ length: Math.max(0, count) }, () => id)
  const even = more > 0 ? 'k2tog' : 'none'
  const rest = [...fill('k', room - Math.abs(more)), ...fill(even, Math.abs(more))]
  const cells = [...cellsOf(stitch), ...cellsOf(stitch), ...rest]
  return pieceOf([rowOf(fill('k', pegs)), rowOf(cells)])
}
