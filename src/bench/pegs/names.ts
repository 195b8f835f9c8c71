import { bindOffLabels, stepTitle } from '../piece/stepWords'
import type { Stretch } from '../../pattern/stretches'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { languages } from '../../languages/languages'
import { upperFirst } from '../../languages/english/forms'

/** "Round 7", "Cast on", "Row 5 of Heel, 2nd time". */
export function stretchName(stretch: Stretch, terms: Terms): string {
  const { words } = languages[terms]
  if (stretch.kind === 'edge')
    return upperFirst(stretch.edge.kind === 'cast on' ? words.castOn : words.bindOff)
  const { chart, number, step, time, times } = stretch
  const row = `${stretch.isRound ? 'Round' : 'Row'} ${number}`
  if (step === null) return row
  if (!chart) return `Plain ${row.toLowerCase()}`
  return `${row} of ${chart.chart}${times > 1 ? `, time ${time + 1} of ${times}` : ''}`
}

/** The steps of a piece that have moves to walk, by their index: "1. Cast on: e-wrap". */
export const walkableSteps = ({
  pattern,
  steps,
}: PieceWork): readonly { readonly step: number; readonly name: string }[] =>
  steps.flatMap(({ step, rows, edge }, index) => {
    if (!edge && (rows?.rows ?? []).length === 0) return []
    const way = step.kind === 'bind off' ? bindOffLabels[step.how] : 'how' in step ? step.how : ''
    const title = [stepTitle(step, pattern), way].filter(Boolean).join(': ')
    return [{ step: index, name: `${index + 1}. ${title}` }]
  })
