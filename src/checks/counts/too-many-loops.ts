import { fix } from '../../pattern/finding'
import { mostLoopsOnPeg } from '../../loom/loom'
import { firstPerColumn } from '../copies'
import { paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { inEachRepeat } from '../wording'
import { unitOfRow } from '../../pattern/unit'

/** By habit three loops on a peg is the most that can be lifted at once (common practice). */
export const tooManyLoops: RowRule = {
  id: 'too-many-loops',
  title: 'Too many loops on a peg',
  severity: 'warning',
  scope: 'row',
  check: ({ run, layout, setting }) => {
    if (run.faults.length === 0) return nothing
    const faults = run.faults.flatMap((fault) => (fault.kind === 'too many loops' ? [fault] : []))
    return firstPerColumn(faults, layout).map(({ peg, loops }) => ({
      pegs: { from: peg, to: peg },
      say: (row) =>
        `${row} works ${loops} loops together on peg ${peg + 1}; more than ${mostLoopsOnPeg} can hardly be lifted over${inEachRepeat(layout, peg)}.`,
      advice: `Knit the peg one ${unitOfRow(run, setting.shape)} earlier, so that fewer loops gather on it.`,
      mend: (row) => [
        fix(
          `Knit peg ${peg + 1} one ${unitOfRow(run, setting.shape)} earlier`,
          paintColumns('knit', row - 1, [layout.columnOf[peg] ?? 0]),
        ),
      ],
    }))
  },
}
