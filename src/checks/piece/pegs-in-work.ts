import type { StepWork } from '../../pattern/workPiece'
import type { PieceRule } from '../rule'
import { forSteps, rowOfStep, stepNamed } from './steps'
import { listed } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** The other loops wait: a row that works them does not do what the step before it says. */
export const pegsInWorkOnly: PieceRule = {
  id: 'piece-pegs',
  title: 'Pegs are worked that should wait',
  severity: 'error',
  scope: 'piece',
  check: (work) =>
    forSteps(work, (step, index) => {
      const { rows, outside } = rowsOutside(step)
      if (rows.length === 0) return null
      const only = pegsNamed(step.pegs)
      const are = step.pegs.from === step.pegs.to ? 'is' : 'are'
      return {
        step: index,
        message: `${stepNamed(work, index)} works ${runsNamed(outside, ['peg', 'pegs'])} in its ${runsNamed(rows, ['row', 'rows'])}, but only ${only} ${are} in work.`,
        advice: `Put those pegs in work before it too, or keep its rows to ${only}.`,
      }
    }),
}

/** Chart rows, and the pegs they work although they wait; 0-based, rising. */
function rowsOutside(step: StepWork): { rows: readonly number[]; outside: readonly number[] } {
  const rows = new Set<number>()
  const outside = new Set<number>()
  const waits = (peg: number): boolean => peg < step.pegs.from || peg > step.pegs.to
  const runs = step.rows?.rows ?? []
  runs.forEach(({ row }, index) => {
    if (!waits(row.from) && !waits(row.to)) return
    for (const { peg, stitch } of row.sites)
      for (let at = peg; at < peg + stitch.width; at++)
        if (waits(at) && stitch.takes + stitch.makes > 0) {
          outside.add(at)
          rows.add(rowOfStep(step, index).number - 1)
        }
  })
  const rising = (set: ReadonlySet<number>) => [...set].sort((a, b) => a - b)
  return { rows: rising(rows), outside: rising(outside) }
}

/** "peg 5", "pegs 2-4 and 7". 0-based in, 1-based out. */
function runsNamed(numbers: readonly number[], [one, many]: readonly [string, string]): string {
  const runs: { from: number; to: number }[] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last?.to === number - 1) last.to = number
    else runs.push({ from: number, to: number })
  }
  const names = runs.map(({ from, to }) => (from === to ? from + 1 : `${from + 1}-${to + 1}`))
  return `${numbers.length === 1 ? one : many} ${listed(names)}`
}
