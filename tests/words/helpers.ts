import { withChart } from '../../src/pattern/edits/chart'
import { workPattern, type PatternRun } from '../../src/pattern/work'
import { newPattern, type Pattern, type Row } from '../../src/pattern/pattern'
import type { Terms } from '../../src/languages/terms'
import { writeRow } from '../../src/words/sentence'
import { writeWords } from '../../src/words/write'
import { readCells } from './cases'
import { cellsFrom } from '../cells'

/** A row of cells: an array, or "k*2, p*2" as in the case files. */
export const rowOf = (cells: string | readonly string[], more: Partial<Row> = {}): Row => ({
  cells: cellsFrom(typeof cells === 'string' ? readCells(cells) : cells),
  run: null,
  heading: null,
  end: 'on',
  ...more,
})

/** A piece on a ring of as many pegs as the rows have columns. */
export function pieceOf(rows: readonly Row[], more: Partial<Pattern> = {}): Pattern {
  const columns = rows[0]?.cells.length ?? 1
  const pattern = newPattern(columns, 1)
  return withChart({ ...pattern, ...more }, { columns, rows })
}

export const firstRun = (pattern: Pattern): PatternRun => {
  const [run] = workPattern(pattern).firstRuns
  if (!run) throw new Error('The piece has no row.')
  return run
}

/** The sentence of a single row. */
export const sentenceOf = (cells: string | readonly string[], terms: Terms = 'us'): string =>
  writeRow(firstRun(pieceOf([rowOf(cells)])), 'ring', terms)

export const linesOf = (pattern: Pattern): string[] =>
  writeWords(workPattern(pattern), pattern.style.terms).lines.map(({ text }) => text)
