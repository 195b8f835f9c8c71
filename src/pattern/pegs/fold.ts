import { turnPegOf } from '../../loom/rowEnd'
import type { Run } from '../pattern'
import type { Step } from '../piece'
import type { PatternRun } from '../row'

/** What of a worked step tells of the fold. */
interface Worked {
  readonly step: Step
  readonly rows: { readonly rows: readonly PatternRun[] } | null
}

/** Rounds that may be worked between a toe and the edge that closes it. */
const mostClosing = 4

/**
 * The pegs that the short rows of a toe lie on, 0-based. Null where the piece does not end in short rows. A
 * toe turns first at the far end of its pegs, then at the near one.
 */
export function toeBefore(steps: readonly Worked[]): Run | null {
  const rows: PatternRun[] = []
  for (const { rows: worked, step } of steps.toReversed()) {
    if (step.kind === 'cast on' || step.kind === 'bind off' || step.kind === 'pegs') break
    rows.unshift(...(worked?.rows ?? []))
    if (rows.some(isTurned)) break
  }
  const last = rows.findLastIndex(isTurned)
  if (last < 0 || rows.length - 1 - last > mostClosing) return null
  const [one, other] = rows
    .map(({ row, heading }) => turnPegOf(row, heading))
    .filter((peg) => peg !== null)
  if (one === undefined || other === undefined) return null
  return { from: Math.min(one, other), to: Math.max(one, other) }
}

/** Where a toe folds the tube: the first peg of its half. Null where it lies on another part than half of the loops. */
export function foldOf(steps: readonly Worked[], loops: number): number | null {
  const toe = toeBefore(steps)
  return toe && 2 * (toe.to - toe.from + 1) === loops ? toe.from : null
}

const isTurned = ({ row }: PatternRun): boolean => row.end !== 'on'
