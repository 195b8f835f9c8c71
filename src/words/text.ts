import { isPlainPiece } from '../pattern/charts'
import { usualEdges } from '../pattern/piece'
import type { Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import { abbreviations } from './abbreviations'
import { languages } from '../languages/languages'
import { cautions, statements } from './statements'
import { writeWords } from './write'

/**
 * The whole instructions as plain text: title, how it is worked, abbreviations, notes, the lines
 * of the chart, finishing and cautions. Sections are parted by an empty line and end in a newline.
 */
export function plainText(work: Work, terms: Terms = work.pattern.style.terms): string {
  const { title, designer, notes, loom, making, gauge } = work.pattern
  const language = languages[terms]
  const { headings } = language
  // A section of a larger piece is begun and ended by other steps.
  const alone = isPlainPiece(work.pattern)
  const key = abbreviations(work, terms).map(
    ({ abbr, name, steps }) => `${abbr}: ${name}${steps ? `. ${steps}` : '.'}`,
  )
  const section = (heading: string, lines: readonly string[]) =>
    lines.length > 0 ? [[heading, ...lines].join('\n')] : []
  return `${[
    [title, designer].filter(Boolean).join('\n'),
    ...section(headings.about, [
      ...statements(work.pattern, [work.chart], terms),
      ...(gauge ? [language.gaugeLine(gauge, making.knit)] : []),
    ]),
    ...section(headings.abbreviations, key),
    ...section(headings.notes, notes.trim() ? [notes.trim()] : []),
    ...section(headings.instructions, [
      ...(alone ? [language.start(usualEdges.castOn, loom.pegs, loom.shape)] : []),
      ...writeWords(work, terms).lines.map(({ text }) => text),
    ]),
    ...section(headings.finishing, alone ? [language.finish(usualEdges.bindOff)] : []),
    ...section(headings.cautions, cautions(work.pattern, work.run.rows, terms)),
  ].join('\n\n')}\n`
}
