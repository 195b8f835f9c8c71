import type { ChartView, PlacedNote, Rule } from '../rule'
import type { Setting } from '../setting'
import { pegNumber } from '../wording'
import { isHeel, sectionsOf, type ShortRows, type TurnRow } from './section'

interface Corner {
  readonly edge: number
  readonly beyond: number
  readonly last: TurnRow
}

/** The sides on which the section ends without a turn past its outermost peg. */
function openCorners({ turns }: ShortRows, { pegs, shape }: Setting): Corner[] {
  return (['forward', 'back'] as const).flatMap((way) => {
    const side = turns.filter(({ heading }) => heading === way)
    const out = side.filter(({ phase }) => phase === 'narrowing').map(({ turnPeg }) => turnPeg)
    const last = side.at(-1)
    if (!last || out.length === 0) return []
    const forward = way === 'forward'
    const edge = forward ? Math.max(...out) : Math.min(...out)
    const beyond = forward ? edge + 1 : edge - 1
    const closed = side.some(
      ({ phase, turnPeg }) =>
        phase === 'widening' && (forward ? turnPeg >= beyond : turnPeg <= beyond),
    )
    // A wrap can go round the join of a ring; a German turn is worked in its row and cannot.
    const possible = (beyond >= 0 && beyond < pegs) || (shape === 'ring' && !last.german)
    return closed || !possible ? [] : [{ edge, beyond, last }]
  })
}

function check({ turnings, setting }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const section of sectionsOf(turnings)) {
    if (!isHeel(section) || section.closedBy === null) continue
    for (const { edge, beyond, last } of openCorners(section, setting)) {
      const peg = pegNumber(beyond, setting.pegs)
      notes.push({
        row: last.index,
        noted: {
          pegs: { from: peg - 1, to: peg - 1 },
          say: (row) =>
            `${row} is the last to turn on this side, on peg ${pegNumber(last.turnPeg, setting.pegs)}; the heel's corner is peg ${pegNumber(edge, setting.pegs)}.`,
          advice: `Go one peg past the corner and turn on peg ${peg}: that closes the hole there.`,
        },
      })
    }
  }
  return notes
}

export const turnCorners: Rule = {
  id: 'turn-corners',
  title: 'Corner of the heel left open',
  severity: 'hint',
  scope: 'chart',
  check,
}
