import type { ChartView, PlacedNote, Rule } from '../rule'
import { pegNumber } from '../wording'
import { turnElsewhere } from './mend-turn'
import { sectionsOf, type TurnRow } from './section'
import { counted } from '../../languages/english/forms'

const told = (turn: TurnRow, pegs: number): { readonly what: string; readonly to: number } => {
  const { turnPeg, held, worked, beyond, heading } = turn
  const step = heading === 'forward' ? 1 : -1
  const name = (peg: number) => `peg ${pegNumber(peg, pegs)}`
  const nearest = worked[0]
  if (nearest !== undefined)
    return {
      what: `goes past ${counted(worked.length, 'turned peg')} before it turns on ${name(turnPeg)}; the nearest was ${name(nearest)}`,
      to: nearest + step,
    }
  if (held)
    return {
      what: `turns on ${name(turnPeg)}, the nearest turned peg, instead of one beyond it`,
      to: turnPeg + step,
    }
  return beyond === null
    ? { what: `turns on ${name(turnPeg)} and works no turned peg`, to: turnPeg }
    : {
        what: `turns on ${name(turnPeg)} and stops short of the nearest turned peg, ${name(beyond)}`,
        to: beyond + step,
      }
}

function check({ turnings, setting }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const { turns } of sectionsOf(turnings))
    for (const turn of turns) {
      if (turn.verdict !== 'short' && turn.verdict !== 'skips') continue
      const { what, to } = told(turn, setting.pegs)
      const peg = (turn.turnPeg + setting.pegs) % setting.pegs
      notes.push({
        row: turn.index,
        noted: {
          pegs: { from: peg, to: peg },
          say: (row) => `${row} ${what}.`,
          advice: `Work to the nearest turned peg, knit its loop and strands together, and turn on peg ${pegNumber(to, setting.pegs)}.`,
          mend: (row) => turnElsewhere(turn, row, to),
        },
      })
    }
  return notes
}

export const turnNearest: Rule = {
  id: 'turn-nearest',
  title: 'Row misses the nearest turned peg',
  severity: 'error',
  scope: 'chart',
  check,
}
