import { fix } from '../../pattern/finding'
import { setEnd, setRun } from '../../pattern/edits/turning'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'

export const turnEdge: RowRule = {
  id: 'turn-edge',
  title: 'No peg to wrap',
  severity: 'error',
  scope: 'row',
  check: ({ run, row: { run: covers }, setting }) =>
    run.faults.length === 0
      ? nothing
      : run.faults.flatMap((fault) =>
          fault.kind !== 'no peg to wrap'
            ? []
            : [
                {
                  pegs: { from: fault.peg, to: fault.peg },
                  say: (row) =>
                    `${row} wraps the peg beyond peg ${fault.peg + 1}, but the rake ends there.`,
                  advice:
                    'Stop one peg earlier, or do not wrap: at the end of a rake work turns by itself.',
                  mend: (row) => [
                    fix('Turn at the end without a wrap', (pattern) => setEnd(pattern, row, 'on')),
                    fix('Stop one peg earlier', (pattern) => {
                      const { from, to } = covers ?? { from: 0, to: setting.pegs - 1 }
                      if (from === to) return pattern
                      const forward = run.heading === 'forward'
                      return setRun(
                        pattern,
                        row,
                        forward ? { from, to: to - 1 } : { from: from + 1, to },
                      )
                    }),
                  ],
                },
              ],
        ),
}
