import { emptyStack } from '../../loom/strand'
import type { Layout } from '../../pattern/layout'
import type { PatternRun } from '../../pattern/work'

/** Loops taken less loops there: in each copy of the repeat, and in the edge columns together. */
export interface RepeatBalance {
  readonly copies: number
  readonly perCopy: number
  readonly inEdges: number
}

/** null when there is no repeat, the row does not cover all of it, or its copies differ. */
export function repeatBalance(
  { row, before }: PatternRun,
  { copyRuns, columnOf }: Layout,
): RepeatBalance | null {
  const first = copyRuns[0]
  const last = copyRuns[copyRuns.length - 1]
  if (!first || !last || row.from > 0 || row.to < columnOf.length - 1) return null
  const width = first.to - first.from + 1
  const perCopy = new Array<number>(copyRuns.length).fill(0)
  let inEdges = 0
  const add = (peg: number, by: number): void => {
    if (peg < first.from || peg > last.to) inEdges += by
    else {
      const copy = Math.floor((peg - first.from) / width)
      perCopy[copy] = (perCopy[copy] ?? 0) + by
    }
  }
  for (const { stitch, peg } of row.sites) if (stitch.takes > 0) add(peg, stitch.takes)
  for (let peg = row.from; peg <= row.to; peg++) if (before.stacks[peg] !== emptyStack) add(peg, -1)
  const one = perCopy[0] ?? 0
  return perCopy.every((value) => value === one)
    ? { copies: copyRuns.length, perCopy: one, inEdges }
    : null
}
