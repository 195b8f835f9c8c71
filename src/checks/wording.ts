import type { Layout } from '../pattern/layout'
import type { Run } from '../pattern/pattern'
import type { PatternRun } from '../pattern/work'
import type { Setting } from './setting'
import { upperFirst } from '../languages/english/forms'
import { pegsNamed } from '../languages/english/pegs'
import { unitOfRow } from '../pattern/unit'

export const PegsNamed = (run: Run): string => upperFirst(pegsNamed(run))

/** A loom peg after wrapping round the join: 0-based in, 1-based out. */
export const pegNumber = (peg: number, pegs: number): number => ((peg + pegs) % pegs) + 1

/** Where the yarn hangs in a gap, on this loom. */
export function gapNamed(gap: number, { shape, pegs }: Setting): string {
  if (shape === 'bar' && gap <= 0) return 'before peg 1'
  if (shape === 'bar' && gap >= pegs) return `after peg ${pegs}`
  return `between pegs ${pegNumber(gap - 1, pegs)} and ${pegNumber(gap, pegs)}`
}

/** "Round 7", "Row 7". */
export const rowNamed = (run: PatternRun, { shape }: Setting, number: number): string =>
  `${upperFirst(unitOfRow(run, shape))} ${number}`

/** Said of something in the first copy of a repeat, which then is in all of them, or in `many`. */
export const inEachRepeat = (
  { copies, copyRuns }: Layout,
  peg: number,
  many: number = copies,
): string => {
  const first = copyRuns[0]
  if (copies < 2 || !first || peg < first.from || peg > first.to) return ''
  return many < copies
    ? ` (in ${many} of the ${copies} repeats)`
    : ` (in each of the ${copies} repeats)`
}
