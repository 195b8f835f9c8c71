import { fix } from '../../pattern/finding'
import { paintColumns } from '../mending'
import type { ChartView, PlacedNote, Rule } from '../rule'
import { pegNumber } from '../wording'
import { turnElsewhere } from './mend-turn'
import { sectionsOf } from './section'

function check({ turnings, setting, work }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const { turns } of sectionsOf(turnings))
    for (const turn of turns) {
      const { index, turnPeg, heading, verdict } = turn
      if (verdict !== 'twice') continue
      const peg = (turnPeg + setting.pegs) % setting.pegs
      const inward = heading === 'forward' ? turnPeg - 1 : turnPeg + 1
      const column = work.layout.columnOf[peg] ?? 0
      notes.push({
        row: index,
        noted: {
          pegs: { from: peg, to: peg },
          say: (row) =>
            `${row} turns on peg ${pegNumber(turnPeg, setting.pegs)}, which still holds the strand of an earlier turn.`,
          advice: 'Turn one peg further in, or knit the loop and its strands together first.',
          mend: (row) => [
            ...turnElsewhere(turn, row, inward),
            fix(`Knit peg ${peg + 1} before turning on it`, paintColumns('knit', row, [column])),
          ],
        },
      })
    }
  return notes
}

/** Turning twice on one peg is a mistake that people report (common practice). */
export const turnTwice: Rule = {
  id: 'turn-twice',
  title: 'Turned twice on one peg',
  severity: 'error',
  scope: 'chart',
  check,
}
