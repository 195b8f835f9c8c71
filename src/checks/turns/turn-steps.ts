import type { ChartView, PlacedNote, Rule } from '../rule'
import { pegNumber } from '../wording'
import { isHeel, sectionsOf } from './section'

function check({ turnings, setting }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const section of sectionsOf(turnings)) {
    if (!isHeel(section)) continue
    const wide = section.turns.filter(
      ({ phase, verdict, turnPeg, beyond }) =>
        phase === 'narrowing' &&
        verdict === 'good' &&
        beyond !== null &&
        Math.abs(beyond - turnPeg) > 1,
    )
    const [first] = wide
    if (!first) continue
    const { index, turnPeg, beyond } = first
    const step = Math.abs((beyond ?? turnPeg) - turnPeg)
    notes.push({
      row: index,
      noted: {
        pegs: { from: turnPeg, to: turnPeg },
        say: (row) =>
          `${row} turns on peg ${pegNumber(turnPeg, setting.pegs)}, ${step} pegs inside the last turn${wide.length > 1 ? `; ${wide.length} turns of these short rows do so` : ''}.`,
        advice: 'Step by one peg at a time: wider steps show as holes.',
      },
    })
  }
  return notes
}

export const turnSteps: Rule = {
  id: 'turn-steps',
  title: 'Turns step by more than one peg',
  severity: 'hint',
  scope: 'chart',
  check,
}
