import { languages } from '../../languages/languages'
import { cautions as sayCautions, runsOf } from '../../words/statements'
import { heading, textStrips } from '../page/blocks'
import { laid, type Part } from '../part'

/** What to mind with things for babies and children. */
export const cautions: Part = {
  id: 'cautions',
  label: 'Cautions',
  isAsked: ({ piece }) => piece.pattern.making.forBaby,
  blocks: ({ piece, column }) => {
    const { pattern } = piece
    const strips = sayCautions(pattern, runsOf(piece)).flatMap((text) => textStrips(text, column))
    const { headings } = languages[pattern.style.terms]
    return laid([heading(headings.cautions, column), { strips, before: 0 }])
  },
}
