import { runsRightToLeft } from '../loom/direction'
import type { Work } from '../pattern/work'
import { counted } from '../languages/english/forms'

/** What a chart shows, in one sentence, for people who do not see it. */
export function chartTitle(kind: string, { pattern, chart, layout }: Work): string {
  const { loom, title } = pattern
  const row = loom.shape === 'ring' ? 'round' : 'row'
  const [side, way] = runsRightToLeft(loom.direction)
    ? ['right', 'right to left']
    : ['left', 'left to right']
  const repeats = chart.repeat ? `, the repeat ${counted(layout.copies, 'time')} round` : ''
  return (
    `${kind} of ${title || 'an untitled piece'}: ${counted(chart.columns, 'column')} on ` +
    `${counted(loom.pegs, 'peg')}${repeats}, ${counted(chart.rows.length, row)}; ` +
    `peg 1 at the ${side}, ${row} 1 runs ${way}.`
  )
}
