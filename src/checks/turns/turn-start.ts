import { chartOn } from '../../pattern/charts'
import { opposite } from '../../loom/direction'
import { setHeading, setRun } from '../../pattern/edits/turning'
import type { Sheet } from '../../pattern/pattern'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { gapNamed } from '../wording'
import { goOn, waysNamed } from './mend-turn'
import { fix, type Fix } from '../../pattern/finding'
import type { Heading } from '../../loom/direction'

/** Legal is what the loom allows: a row starts beside where the yarn is. */
export const turnStart: RowRule = {
  id: 'turn-start',
  title: 'Row does not begin at the yarn',
  severity: 'error',
  scope: 'row',
  startsWith: 'yarn',
  check: ({ run, setting, layout }) => {
    const fault = run.faults.find(({ kind }) => kind === 'start')
    if (fault?.kind !== 'start' || layout.over !== 0) return nothing
    const { peg, yarnGap } = fault
    return [
      {
        pegs: { from: peg, to: peg },
        say: (row) =>
          `${row} begins at peg ${peg + 1}, but the yarn is ${gapNamed(yarnGap, setting)}.`,
        advice: 'Begin beside the yarn, or end the row before it there.',
        mend: (row) => startThere(row, yarnGap, run.heading, run.before.heading),
      },
    ]
  },
}

function startThere(row: number, gap: number, heading: Heading, leads: Heading): Fix[] {
  const from =
    (way: Heading) =>
    (pattern: Sheet): Sheet => {
      const old = chartOn(pattern).rows[row]?.run ?? { from: 0, to: pattern.loom.pegs - 1 }
      const run = way === 'forward' ? { from: gap, to: old.to } : { from: old.from, to: gap - 1 }
      if (run.from < 0 || run.to >= pattern.loom.pegs || run.from > run.to) return pattern
      const moved = setRun(pattern, row, run)
      return way === heading ? moved : setHeading(moved, row, way)
    }
  const peg = (way: Heading) => (way === 'forward' ? gap + 1 : gap)
  const other = opposite(heading)
  return [
    fix(`Begin at peg ${peg(leads)}, towards ${waysNamed[leads]} pegs`, goOn(row, gap, leads)),
    fix(`Begin at peg ${peg(heading)}`, from(heading)),
    fix(`Begin at peg ${peg(other)} and work the other way`, from(other)),
    fix('Work it the other way', (pattern) => setHeading(pattern, row, other)),
    fix('Work it the way the row before leads', (pattern) => setHeading(pattern, row, null)),
  ]
}
