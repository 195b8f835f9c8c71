import { totalsOf } from '../../pattern/totals'
import type { PieceWork } from '../../pattern/workPiece'
import { sayTotals } from '../../words/piece/totals'
import { heading, labelled, type Column } from '../page/blocks'
import type { Block } from '../page/flow'
import { laid, type Part } from '../part'
import { languages } from '../../languages/languages'

/** Yarn, time and counts; of one chart alone only when yarn or time are known. */
export const totals: Part = {
  id: 'totals',
  label: 'Yarn and stitch counts',
  isAsked: ({ piece, isOneChart }) => {
    const { yarn, minutes } = totalsOf(piece).whole
    return !isOneChart || yarn !== null || minutes !== null
  },
  blocks: ({ piece, column }) => laid(totalsBlocks(piece, column)),
}

/** What the piece comes to, with what the numbers rest on; what is not known is left out. */
function totalsBlocks(work: PieceWork, column: Column): Block[] {
  const { pattern } = work
  const { whole } = totalsOf(work)
  const lines = sayTotals(whole, work)
  const together = (isAssumption: boolean): Block => ({
    strips: lines
      .filter(({ kind }) => (kind === 'assumption') === isAssumption)
      .flatMap(({ text }) => labelled('', text, column).strips),
    before: isAssumption ? 0.5 * column.type.unit : 0,
  })
  return [
    heading(languages[pattern.style.terms].booklet.totals, column),
    together(false),
    together(true),
  ]
}
