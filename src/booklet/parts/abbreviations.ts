import type { Pattern } from '../../pattern/pattern'
import type { PieceWork } from '../../pattern/workPiece'
import type { Abbreviation } from '../../words/abbreviations'
import { languages } from '../../languages/languages'
import { pieceAbbreviations } from '../../words/piece/text'
import { heading, labelled, type Column } from '../page/blocks'
import type { Block } from '../page/flow'
import { isTurned } from '../context'
import { laid, type Part } from '../part'
import { explainsStitches } from './ownWords'
import { ownWordsOfChart } from './words'

/** Every abbreviation that the words use, with what the hands do; own words that explain them explain them alone. */
export const abbreviations: Part = {
  id: 'abbreviations',
  label: 'Abbreviations',
  isAsked: (context) => {
    const own = ownWordsOfChart(context)
    return context.settings.words && !(own && explainsStitches(context.piece, own))
  },
  blocks: ({ piece, second, column }) =>
    laid(
      abbreviationBlocks(
        piece.pattern,
        second && !isTurned(second, piece) ? [piece, second] : [piece],
        column,
      ),
    ),
}

/** So many abbreviations at least stand on the page that their list ends on. */
const fewestOnPage = 3

/** What stands beside an abbreviation; the steps of the plain knit begin with its name, and no word stands twice. */
const explained = ({ abbr, name, steps, stitch }: Abbreviation): string => {
  if (!steps) return name
  return abbr === name || stitch?.role === 'knit' ? steps : `${name}. ${steps}`
}

/** Those of the pieces that are written out; all are worked with the habits of the first. */
export function abbreviationBlocks(
  pattern: Pattern,
  works: readonly [PieceWork, ...PieceWork[]],
  column: Column,
): Block[] {
  const { terms } = pattern.style
  const list = pieceAbbreviations(works, terms)
  return [
    heading(languages[terms].headings.abbreviations, column),
    ...list.map((entry, index): Block => {
      const block = labelled(entry.abbr, explained(entry), column)
      const isNearEnd = index < list.length - 1 && index >= list.length - fewestOnPage
      return isNearEnd ? { ...block, beforeNext: 4 } : block
    }),
  ]
}
