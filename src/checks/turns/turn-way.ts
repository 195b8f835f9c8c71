import { setHeading } from '../../pattern/edits/turning'
import { fix } from '../mending'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { goOn, waysNamed } from './mend-turn'

/** After a turn work goes back, and only a turn sends it back (common practice). */
export const turnWay: RowRule = {
  id: 'turn-way',
  title: 'Row goes against the way of the work',
  severity: 'warning',
  explain:
    'After a turn work goes back the other way; to change the way without a turn leaves a hole.',
  scope: 'row',
  check: ({ run, setting }) => {
    const { heading, before, row } = run
    if (run.faults.some(({ kind }) => kind === 'start')) return nothing
    if (heading !== before.heading)
      return [
        {
          pegs: null,
          say: (name) =>
            `${name} goes to ${waysNamed[heading]} pegs, but the row before it leads to ${waysNamed[before.heading]} ones.`,
          advice:
            'Let it go on the way the row before leads, or end that row with a turn or without one.',
          mend: (index) => [
            fix(`Go to ${waysNamed[before.heading]} pegs`, (pattern) =>
              setHeading(pattern, index, null),
            ),
            fix(
              `Go to ${waysNamed[before.heading]} pegs, from the yarn on`,
              goOn(index, before.yarn.gap, before.heading),
            ),
          ],
        },
      ]
    const whole = row.from === 0 && row.to >= setting.pegs - 1
    if (setting.shape === 'ring' && whole && heading === 'back' && row.heading === null)
      return [
        {
          pegs: null,
          say: (name) =>
            `${name} goes from peg ${setting.pegs} to peg 1, against the rounds: the rows before it turned an odd number of times.`,
          advice: 'Turn once more before it, so that the rounds go on the way the loom is worked.',
        },
      ]
    return nothing
  },
}
