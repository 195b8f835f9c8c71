import { fix } from '../../pattern/finding'
import { columnsUnder, runsOf } from '../copies'
import { inFirstCopy } from '../copies'
import { paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { inEachRepeat } from '../wording'
import { pegsNamed } from '../../languages/english/pegs'

/** Loops have to be moved along when a loop is made on another peg than it was taken from. */
export const stretch: RowRule = {
  id: 'stretch',
  title: 'Loop moved more than one peg',
  severity: 'warning',
  scope: 'row',
  check: ({ run, layout }) => {
    if (run.faults.length === 0) return nothing
    const faults = run.faults.flatMap((fault) => (fault.kind === 'stretch' ? [fault] : []))
    const spans = faults.flatMap(({ peg, to }) =>
      Array.from({ length: Math.abs(to - peg) + 1 }, (_, i) => Math.min(peg, to) + i),
    )
    return runsOf(spans)
      .filter(({ from }) => inFirstCopy(layout, from))
      .map((pegs) => {
        const inside = faults.filter(({ peg }) => peg >= pegs.from && peg <= pegs.to)
        const most = Math.max(...inside.map((fault) => fault.pegs))
        return {
          pegs,
          say: (row) =>
            `${row} moves ${inside.length === 1 ? `a loop ${most} pegs` : `${inside.length} loops up to ${most} pegs`} along, on ${pegsNamed(pegs)}${inEachRepeat(layout, pegs.from)}.`,
          advice:
            'Put each increase next to its decrease, so that no loop moves more than one peg.',
          mend: (row) => [
            fix(`Knit ${pegsNamed(pegs)}`, paintColumns('knit', row, columnsUnder(layout, pegs))),
          ],
        }
      })
  },
}
