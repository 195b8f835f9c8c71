import type { ChartView, PlacedNote, Rule } from '../rule'
import { pegNumber } from '../wording'
import { turnElsewhere } from './mend-turn'
import { lastOnSide, sectionsOf } from './section'

function check({ turnings, setting }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const section of sectionsOf(turnings))
    for (const turn of section.turns) {
      if (turn.verdict !== 'inside') continue
      const { index, turnPeg, heading } = turn
      const last = lastOnSide(section, turn)?.turnPeg ?? turn.worked[0] ?? turnPeg
      const inward = heading === 'forward' ? last - 1 : last + 1
      const peg = (turnPeg + setting.pegs) % setting.pegs
      notes.push({
        row: index,
        noted: {
          pegs: { from: peg, to: peg },
          say: (row) =>
            `${row} turns on peg ${pegNumber(turnPeg, setting.pegs)}; the last turn on that side was on peg ${pegNumber(last, setting.pegs)}, and turns step inward while the heel narrows.`,
          advice: `Turn on peg ${pegNumber(inward, setting.pegs)}, one peg inside the last turn.`,
          mend: (row) => turnElsewhere(turn, row, inward),
        },
      })
    }
  return notes
}

export const turnInside: Rule = {
  id: 'turn-inside',
  title: 'Turn is not inside the last one',
  severity: 'error',
  scope: 'chart',
  check,
}
