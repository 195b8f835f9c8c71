import { namedOn } from '../../../src/pattern/charts'
import fc, { type Arbitrary } from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { withChart } from '../../../src/pattern/edits/chart'
import { setWords } from '../../../src/pattern/edits/words'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import { workPattern, type Work } from '../../../src/pattern/work'
import { readFile } from '../../../src/shelf/format'
import { directions } from '../../../src/loom/direction'
import { shapes } from '../../../src/pattern/pattern'
import { termSets } from '../../../src/languages/terms'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { applyChanges, compare, type Comparison } from '../../../src/words/compare/compare'
import { read } from '../../../src/words/read/read'
import { readSettingsOf, type Reading } from '../../../src/words/read/reading'
import { writeWords } from '../../../src/words/write'
import { arbitraryBands, arbitraryCells } from '../../arbitraries'
import { rowOf } from '../helpers'

/** A piece of rows in the short form of the case files: "k*2, p*2". */
export function piece(rows: readonly string[], change: Partial<Pattern['loom']> = {}): Pattern {
  const list = rows.map((cells) => rowOf(cells))
  const columns = list[0]?.cells.length ?? 1
  const pattern = newPattern(change.pegs ?? columns, 1)
  return withChart(
    { ...pattern, loom: { ...pattern.loom, ...change } },
    { columns, repeat: null, rows: list },
  )
}

export const linesOf = (work: Work): string[] =>
  writeWords(work, work.pattern.style.terms).lines.map(({ text }) => text)

export const readFor = (pattern: Pattern, text: string): Reading =>
  read(text, readSettingsOf(pattern))

/** Hold lines of words against a pattern, whose own they are. */
export function compared(pattern: Pattern, lines: readonly string[]): Comparison {
  const text = lines.join('\n')
  return compare(readFor(pattern, text), workPattern(setWords(pattern, text)))
}

export const messages = ({ differences }: Comparison): string[] =>
  differences.map(({ message }) => message)

/** What is left after a repair. */
export function repaired(
  { reading, work }: Comparison,
  fix: Comparison['differences'][number]['fixes'][number],
): Comparison {
  if ('edit' in fix) {
    const pattern = fix.edit(work.pattern)
    return compare(readFor(pattern, namedOn(pattern).words ?? reading.text), workPattern(pattern))
  }
  const text = applyChanges(reading.text, fix.changes)
  return compare(readFor(work.pattern, text), work)
}

const seeds = new URL('../../../seeds/', import.meta.url)

export const starters: readonly Pattern[] = readdirSync(seeds)
  .filter((name) => name.endsWith('.json'))
  .map((name) => {
    const result = readFile(readFileSync(new URL(name, seeds), 'utf8'))
    if (!result.ok) throw new Error(result.message)
    return result.pattern
  })

/** Stitches that leave the loops where they are: any row of them can be worked. */
const steady = standardVocabulary.stitches.filter(
  ({ takes, makes, width, id }) =>
    takes === width && makes === width && !['ew', 'uw', 'fk', 'tk'].includes(id),
)

/** Pieces that can be worked, with repeats and bands, in both terms and both directions. */
export const arbitraryPiece: Arbitrary<Pattern> = fc
  .record({
    columns: fc.integer({ min: 4, max: 14 }),
    copies: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 2, max: 8 }),
  })
  .chain(({ columns, copies, rows }) =>
    fc
      .record({
        shape: fc.constantFrom(...shapes),
        direction: fc.constantFrom(...directions),
        terms: fc.constantFrom(...termSets),
        bands: arbitraryBands(rows).map((bands) =>
          bands.map((band) => ({ ...band, times: 2 + (band.times % 3) })),
        ),
        repeat: fc.boolean(),
        cells: fc.array(arbitraryCells(columns, steady), { minLength: rows, maxLength: rows }),
      })
      .map(({ shape, direction, terms, bands, repeat, cells }) => {
        const pattern = newPattern(repeat ? columns * copies : columns, 1)
        return withChart(
          {
            ...pattern,
            loom: { ...pattern.loom, shape, direction },
            style: { ...pattern.style, terms },
          },
          {
            columns,
            bands,
            repeat: repeat ? { from: 0, to: columns - 1 } : null,
            rows: cells.map((row) => rowOf(row)),
          },
        )
      }),
  )
