import { laid, type Context, type Part } from '../part'
import { chartWordBlocks } from './chartWords'
import { ownWordBlocks } from './ownWords'
import { pieceWordBlocks } from './pieceWords'

/** The instructions, as the charts write them or in the designer's own words. */
export const words: Part = {
  id: 'words',
  label: 'Words',
  leavable: { setting: 'words', isOffered: () => true },
  isAsked: ({ settings }) => settings.words,
  blocks: (context) => {
    const { piece, charts, settings, column, isOneChart } = context
    const [chart] = charts
    if (!isOneChart || !chart)
      return laid(pieceWordBlocks(piece, settings.wording === 'own', column))
    const own = ownWordsOfChart(context)
    return laid(
      own === null ? chartWordBlocks(chart, piece, column) : ownWordBlocks(piece, own, column),
    )
  },
}

/** The own words that are printed for all of a piece that is one chart; else null. */
export const ownWordsOfChart = ({ isOneChart, settings, piece }: Context): string | null =>
  isOneChart && settings.wording === 'own' ? piece.pattern.charts[0].words : null
