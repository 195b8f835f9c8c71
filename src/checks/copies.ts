import type { Layout } from '../pattern/layout'
import type { Run } from '../pattern/pattern'

/** Is this peg outside the repeat or in its first copy? Later copies only say the same again. */
export function inFirstCopy({ copyRuns }: Layout, peg: number): boolean {
  const second = copyRuns[1]
  const last = copyRuns[copyRuns.length - 1]
  return !second || !last || peg < second.from || peg > last.to
}

/** Of things noticed at pegs, the first for each chart column. */
export function firstPerColumn<T extends { readonly peg: number }>(
  list: readonly T[],
  { columnOf }: Layout,
): readonly T[] {
  if (list.length < 2) return list
  const seen = new Set<number>()
  return [...list]
    .sort((a, b) => a.peg - b.peg)
    .filter(({ peg }) => {
      const column = columnOf[peg] ?? -1 - peg
      if (seen.has(column)) return false
      seen.add(column)
      return true
    })
}

/** Join pegs that are neighbours into runs. */
export function runsOf(pegs: readonly number[]): Run[] {
  const runs: { from: number; to: number }[] = []
  for (const peg of [...new Set(pegs)].sort((a, b) => a - b)) {
    const last = runs[runs.length - 1]
    if (last?.to === peg - 1) last.to = peg
    else runs.push({ from: peg, to: peg })
  }
  return runs
}

/** The chart columns under a run of pegs, each once. */
export const columnsUnder = ({ columnOf }: Layout, { from, to }: Run): number[] => [
  ...new Set(columnOf.slice(Math.max(0, from), to + 1)),
]
