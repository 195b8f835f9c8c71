import { fix } from '../../pattern/finding'
import { setHeading } from '../../pattern/edits/turning'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { goOn, waysNamed } from './mend-turn'

/** After a turn work goes back, and only a turn sends it back (common practice). */
export const turnWay: RowRule = {
  id: 'turn-way',
  title: 'Row is worked the wrong way',
  severity: 'warning',
  scope: 'row',
  check: ({ run, setting }) => {
    const { heading, before, row } = run
    if (run.faults.some(({ kind }) => kind === 'start')) return nothing
    if (heading !== before.heading)
      return [
        {
          pegs: null,
          say: (name) =>
            `${name} is worked towards ${waysNamed[heading]} pegs, but the work before it leads towards ${waysNamed[before.heading]} ones.`,
          advice:
            'Work it the way the work leads, or change how the row before it ends: with a turn, or without one.',
          mend: (index) => [
            fix(`Work it towards ${waysNamed[before.heading]} pegs`, (pattern) =>
              setHeading(pattern, index, null),
            ),
            fix(
              `Work it towards ${waysNamed[before.heading]} pegs, from the yarn on`,
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
            `${name} goes back from peg ${setting.pegs} to peg 1: before it, work turned an odd number of times.`,
          advice: 'Turn once more before it, so that the rounds go on the usual way.',
        },
      ]
    return nothing
  },
}
