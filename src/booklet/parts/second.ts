import { pegsOfSecond } from '../../pattern/pair'
import { directionSaid } from '../../words/statements'
import { chartsOf, isTurned } from '../context'
import { paragraph, partHeading } from '../page/blocks'
import type { Block } from '../page/flow'
import { layParts, type Part } from '../part'
import { abbreviations } from './abbreviations'
import { charts } from './charts'
import { key } from './key'
import { pictures } from './pictures'
import { words } from './words'
import { languages } from '../../languages/languages'

/** The mirrored second of a pair, written out from its own title on. */
export const second: Part = {
  id: 'second',
  label: 'Second of the pair',
  leavable: { setting: 'second', isOffered: ({ pair }) => pair === 'mirrored' },
  isAsked: ({ second: piece, settings }) => piece !== null && (settings.charts || settings.words),
  blocks: (context) => {
    const { second: piece, piece: first, column, settings } = context
    if (!piece) return { blocks: [], warnings: [] }
    const { pattern } = first
    const { terms } = pattern.style
    const blocks: Block[] = [partHeading(languages[terms].booklet.secondPart, column)]
    // A bar is mirrored by beginning at its other end.
    const numbered = languages[terms].piece.secondPegs(pegsOfSecond(pattern))
    if (numbered) {
      const said = `${directionSaid(piece.pattern)} ${numbered}`
      blocks.push({ ...paragraph(said, column, 0.5), withNext: true })
    }
    // Crosses and decreases are other moves where it is worked the other way round.
    const explained = isTurned(piece, first) ? [abbreviations] : []
    const made = layParts([charts, key, ...explained, words, pictures], {
      ...context,
      settings: { ...settings, wording: 'chart' },
      piece,
      charts: chartsOf(piece),
      second: null,
      before: [...context.before, ...blocks],
    })
    return { ...made, blocks: [...blocks, ...made.blocks] }
  },
}
