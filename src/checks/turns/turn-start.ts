import { opposite } from '../../loom/direction'
import { setHeading, setRun } from '../../pattern/edits/turning'
import type { Pattern } from '../../pattern/pattern'
import { fix } from '../mending'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { gapNamed } from '../wording'
import { goOn, waysNamed } from './mend-turn'
import type { Fix } from '../finding'
import type { Heading } from '../../loom/direction'

/** Legal is what the loom allows: a row starts beside where the yarn is. */
export const turnStart: RowRule = {
  id: 'turn-start',
  title: 'Row does not start at the yarn',
  severity: 'error',
  explain: 'The yarn cannot jump: a row has to start with the peg beside which the yarn hangs.',
  scope: 'row',
  check: ({ run, setting, layout }) => {
    const fault = run.faults.find(({ kind }) => kind === 'start')
    if (fault?.kind !== 'start' || layout.over !== 0) return nothing
    const { peg, yarnGap } = fault
    return [
      {
        pegs: { from: peg, to: peg },
        say: (row) =>
          `${row} starts at peg ${peg + 1}, but the yarn hangs ${gapNamed(yarnGap, setting)}.`,
        advice: 'Start the row beside the yarn, or let the row before it end there.',
        mend: (row) => startThere(row, yarnGap, run.heading, run.before.heading),
      },
    ]
  },
}

function startThere(row: number, gap: number, heading: Heading, leads: Heading): Fix[] {
  const from =
    (way: Heading) =>
    (pattern: Pattern): Pattern => {
      const old = pattern.chart.rows[row]?.run ?? { from: 0, to: pattern.loom.pegs - 1 }
      const run = way === 'forward' ? { from: gap, to: old.to } : { from: old.from, to: gap - 1 }
      if (run.from < 0 || run.to >= pattern.loom.pegs || run.from > run.to) return pattern
      const moved = setRun(pattern, row, run)
      return way === heading ? moved : setHeading(moved, row, way)
    }
  const peg = (way: Heading) => (way === 'forward' ? gap + 1 : gap)
  const other = opposite(heading)
  return [
    fix(`Start at peg ${peg(leads)}, to ${waysNamed[leads]} pegs`, goOn(row, gap, leads)),
    fix(`Start at peg ${peg(heading)}`, from(heading)),
    fix(`Start at peg ${peg(other)} and head the other way`, from(other)),
    fix('Head the other way', (pattern) => setHeading(pattern, row, other)),
    fix('Go on the way the row before leads', (pattern) => setHeading(pattern, row, null)),
  ]
}
