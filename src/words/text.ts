import { isPlainPiece } from '../pattern/charts'
import type { Pattern } from '../pattern/pattern'
import { usualEdges } from '../pattern/piece'
import type { PatternRun, Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import { abbreviations, type Abbreviation } from './abbreviations'
import { languages } from '../languages/languages'
import { cautions, statements } from './statements'
import { writeWords } from './write'

/** What stands between the title and the end of whole instructions. */
interface Told {
  readonly statements: readonly string[]
  readonly key: readonly Abbreviation[]
  readonly blocks: readonly { readonly heading: string; readonly lines: readonly string[] }[]
  readonly finishing: readonly string[]
  /** The rows that are worked. */
  readonly runs: readonly PatternRun[]
}

/**
 * Whole instructions as plain text: title, how it is worked, abbreviations, notes, the blocks, finishing
 * and cautions. Parts are divided by an empty line; the text ends in a newline.
 */
export function wholeText(pattern: Pattern, terms: Terms, told: Told): string {
  const { title, designer, notes, making, gauge } = pattern
  const { headings, gaugeLine } = languages[terms]
  const key = told.key.map(
    ({ abbr, name, steps }) => `${abbr}: ${name}${steps ? `. ${steps}` : '.'}`,
  )
  const about = [...told.statements, ...(gauge ? [gaugeLine(gauge, making.knit)] : [])]
  const parts = [
    { heading: headings.about, lines: about },
    { heading: headings.abbreviations, lines: key },
    { heading: headings.notes, lines: notes.trim() ? [notes.trim()] : [] },
    ...told.blocks,
    { heading: headings.finishing, lines: told.finishing },
    { heading: headings.cautions, lines: cautions(pattern, told.runs, terms) },
  ]
  return `${[
    [title, designer].filter(Boolean).join('\n'),
    ...parts
      .filter(({ lines }) => lines.length > 0)
      .map(({ heading, lines }) => [heading, ...lines].join('\n')),
  ].join('\n\n')}\n`
}

/** The whole instructions of one chart, in one block. */
export function plainText(work: Work, terms: Terms = work.pattern.style.terms): string {
  const { pattern, chart, run } = work
  const { headings, start, finish } = languages[terms]
  const { pegs, shape } = pattern.loom
  // A chart of a larger piece is begun and ended by other steps.
  const alone = isPlainPiece(pattern)
  const lines = writeWords(work, terms).lines.map(({ text }) => text)
  const begun = alone ? [start(usualEdges.castOn, pegs, shape)] : []
  return wholeText(pattern, terms, {
    statements: statements(pattern, [chart], terms),
    key: abbreviations(work, terms),
    blocks: [{ heading: headings.instructions, lines: [...begun, ...lines] }],
    finishing: alone ? [finish(usualEdges.bindOff)] : [],
    runs: run.rows,
  })
}
