import { setRun } from '../../pattern/edits/turning'
import { fix } from '../mending'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { pegsNamed } from '../wording'

/** A short row that was set on a larger loom may ask for pegs that this one does not have. */
export const runFit: RowRule = {
  id: 'run-fit',
  title: 'Row asks for pegs that are not there',
  severity: 'error',
  explain: 'A row can cover only pegs that the loom has and that the chart has a column for.',
  scope: 'row',
  check: ({ row, layout }) => {
    const { run } = row
    const pegs = layout.columnOf.length
    if (!run || run.to < pegs) return nothing
    return [
      {
        pegs: null,
        say: (name) => `${name} covers ${pegsNamed(run)}, but chart and loom go up to peg ${pegs}.`,
        advice: 'Let the row end where the loom does, or take a larger loom.',
        mend: (index) => [
          fix(`End the row at peg ${pegs}`, (pattern) =>
            setRun(pattern, index, { from: Math.min(run.from, pegs - 1), to: pegs - 1 }),
          ),
          fix('Work it over all the pegs', (pattern) => setRun(pattern, index, null)),
        ],
      },
    ]
  },
}
