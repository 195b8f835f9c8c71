import { bindOffLabels } from '../piece/stepWords'
import type { Step } from '../../pattern/piece'
import type { Stretch } from '../../pattern/stretches'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { languages, termOf } from '../../languages/languages'
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

function stepName(step: Step, terms: Terms): string {
  const { words } = languages[terms]
  switch (step.kind) {
    case 'cast on':
      return `${upperFirst(words.castOn)}: ${step.how}`
    case 'bind off':
      return `${upperFirst(words.bindOff)}: ${bindOffLabels[step.how]}`
    case 'chart':
      return step.times > 1 ? `${step.chart}, ${step.times} times` : step.chart
    case 'plain':
      return `Plain: ${termOf(step.stitch, terms).name}`
    case 'pegs':
      return 'Pegs you work'
    case 'note':
      return 'Note'
  }
}

/** The steps of a piece that have moves to walk, by their index. */
export const walkableSteps = (
  { steps }: PieceWork,
  terms: Terms,
): readonly { readonly step: number; readonly name: string }[] =>
  steps.flatMap(({ step, rows, edge }, index) =>
    edge || (rows && rows.rows.length > 0)
      ? [{ step: index, name: `${index + 1}. ${stepName(step, terms)}` }]
      : [],
  )
