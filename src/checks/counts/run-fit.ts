import { fix } from '../../pattern/finding'
import { setRun } from '../../pattern/edits/turning'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { pegsNamed } from '../../languages/english/pegs'

/** A short row that was set on a larger loom may ask for pegs that this one does not have. */
export const runFit: RowRule = {
  id: 'run-fit',
  title: 'Row goes past the loom',
  severity: 'error',
  scope: 'row',
  check: ({ row, layout }) => {
    const { run } = row
    const pegs = layout.columnOf.length
    if (!run || run.to < pegs) return nothing
    return [
      {
        pegs: null,
        say: (name) =>
          `${name} covers ${pegsNamed(run)}, but the ${layout.pegs > pegs ? 'chart' : 'loom'} ends at peg ${pegs}.`,
        advice: `End it at peg ${pegs}, or use a larger ${layout.pegs > pegs ? 'chart' : 'loom'}.`,
        mend: (index) => [
          fix(`End it at peg ${pegs}`, (pattern) =>
            setRun(pattern, index, { from: Math.min(run.from, pegs - 1), to: pegs - 1 }),
          ),
          fix('Work it over all the pegs', (pattern) => setRun(pattern, index, null)),
        ],
      },
    ]
  },
}
