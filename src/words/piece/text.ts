import { usedCharts } from '../../pattern/charts'
import { habitsOf } from '../../pattern/habits'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { abbreviationsOf, type Abbreviation } from '../abbreviations'
import { languages } from '../../languages/languages'
import { runsOf, statements } from '../statements'
import { wholeText } from '../text'
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

/** Exactly the abbreviations that the words of whole pieces use; all are worked with the habits of the first. */
export function pieceAbbreviations(
  works: readonly [PieceWork, ...PieceWork[]],
  terms: Terms,
): readonly Abbreviation[] {
  const lines = works.flatMap((work) => writePiece(work, terms).blocks.flatMap(linesOf))
  return abbreviationsOf(works.flatMap(runsOf), habitsOf(works[0].pattern), lines, terms)
}

const linesOf = ({ lines }: PieceBlock): readonly string[] => lines.map(({ text }) => text)

/**
 * The whole instructions of a piece, in a block for each stretch from cast-on to bind-off. `own`: with the
 * designer's own words where a chart has any.
 */
export const pieceText = (
  work: PieceWork,
  terms: Terms = work.pattern.style.terms,
  own = false,
): string =>
  wholeText(work.pattern, terms, {
    statements: pieceStatements(work, terms),
    key: pieceAbbreviations([work], terms),
    blocks: writePiece(work, terms, own).blocks.map((block) => ({
      heading: block.heading,
      lines: linesOf(block),
    })),
    finishing: [languages[terms].piece.weaveIn],
    runs: runsOf(work),
  })
