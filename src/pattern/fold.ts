import type { Step } from './piece'
import type { PatternRun } from './work'

/** What of a worked step tells of the fold. */
interface Worked {
  readonly step: Step
  readonly rows: { readonly rows: readonly PatternRun[] } | null
}

/** Rounds that may be worked between a toe and the edge that closes it. */
const mostClosing = 4

/**
 * Where the short rows of a toe fold the tube: the first peg of the half that they lie on, 0-based. Null
 * where the piece does not end in short rows on half of its loops. A toe turns first at the far end of
 * its pegs, then at the near one.
 */
export function foldOf(steps: readonly Worked[], loops: number): number | null {
  const rows: PatternRun[] = []
  for (const { rows: worked, step } of steps.toReversed()) {
    if (step.kind === 'cast on' || step.kind === 'bind off' || step.kind === 'pegs') break
    rows.unshift(...(worked?.rows ?? []))
    if (rows.some(isTurned)) break
  }
  const last = rows.findLastIndex(isTurned)
  if (last < 0 || rows.length - 1 - last > mostClosing) return null
  const [one, other] = rows.filter(isTurned).map(turnPeg)
  if (one === undefined || other === undefined) return null
  const half = Math.abs(one - other) + 1
  return 2 * half === loops ? Math.min(one, other) : null
}

const isTurned = ({ row }: PatternRun): boolean => row.end !== 'on'

/** A German turn lies on the last peg that is worked, a wrap on the next one. */
function turnPeg({ row, heading }: PatternRun): number {
  const beyond = row.end === 'wrap' ? 1 : 0
  return heading === 'forward' ? row.to + beyond : row.from - beyond
}
