import { usedCharts } from '../../pattern/charts'
import { habitsOf } from '../../pattern/habits'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { abbreviationsOf, type Abbreviation } from '../abbreviations'
import { languages } from '../../languages/languages'
import { cautions, runsOf, statements } from '../statements'
import { writePiece, type PieceBlock } from './write'

/** What a knitter must be told before the cast-on: what any chart of the piece asks for. */
export function pieceStatements(
  { pattern }: PieceWork,
  terms: Terms = pattern.style.terms,
): readonly string[] {
  const used = usedCharts(pattern)
  const shown = used.length > 0 ? used : pattern.charts.slice(0, 1)
  return statements(
    pattern,
    shown.map(({ chart }) => chart),
    terms,
  )
}

/** Exactly the abbreviations that the words of the whole piece use. */
export function pieceAbbreviations(
  work: PieceWork,
  terms: Terms = work.pattern.style.terms,
  blocks: readonly PieceBlock[] = writePiece(work, terms).blocks,
): readonly Abbreviation[] {
  const lines = blocks.flatMap((block) => block.lines.map(({ text }) => text))
  return abbreviationsOf(runsOf(work), habitsOf(work.pattern), lines, terms)
}

/**
 * The whole instructions of a piece as plain text: title, how it is worked, abbreviations, notes,
 * a part for each stretch from cast-on to bind-off, finishing and cautions. Parts are divided by an
 * empty line; the text ends in a newline.
 */
export function pieceText(work: PieceWork, terms: Terms = work.pattern.style.terms): string {
  const { pattern } = work
  const { title, designer, notes, making, gauge } = pattern
  const { headings, gaugeLine } = languages[terms]
  const { blocks } = writePiece(work, terms)
  const key = pieceAbbreviations(work, terms, blocks).map(
    ({ abbr, name, steps }) => `${abbr}: ${name}${steps ? `. ${steps}` : '.'}`,
  )
  const part = (heading: string, lines: readonly string[]) =>
    lines.length > 0 ? [[heading, ...lines].join('\n')] : []
  return `${[
    [title, designer].filter(Boolean).join('\n'),
    ...part(headings.about, [
      ...pieceStatements(work, terms),
      ...(gauge ? [gaugeLine(gauge, making.knit)] : []),
    ]),
    ...part(headings.abbreviations, key),
    ...part(headings.notes, notes.trim() ? [notes.trim()] : []),
    ...blocks.flatMap(({ heading, lines }) =>
      part(
        heading,
        lines.map(({ text }) => text),
      ),
    ),
    ...part(headings.finishing, [languages[terms].piece.weaveIn]),
    ...part(headings.cautions, cautions(pattern, runsOf(work), terms)),
  ].join('\n\n')}\n`
}
