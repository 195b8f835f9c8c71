import { onChart } from '../pattern/charts'
import { workPattern, type Work } from '../pattern/work'
import type { Fix } from './finding'
import type { Rule } from './rule'

/** At most so many ways are offered for one finding. */
const mostFixes = 4

/** The rules a worked pattern breaks, each as often as it does. */
type Check = (work: Work) => readonly Rule[]

const counted = (broken: readonly Rule[]): Map<Rule, number> => {
  const counts = new Map<Rule, number>()
  for (const rule of broken) counts.set(rule, (counts.get(rule) ?? 0) + 1)
  return counts
}

/**
 * Of the repairs tried for a finding of `rule`, those after which there is one finding less of that
 * rule and not one more of any other. Counted, since a repair may move rows and columns.
 */
export function thatWork(
  work: Work,
  rule: Rule,
  candidates: readonly Fix[],
  check: Check,
): readonly Fix[] {
  if (candidates.length === 0) return candidates
  const before = counted(check(work))
  const sheet = onChart(work.pattern, work.name)
  const good: Fix[] = []
  for (const candidate of candidates) {
    if (good.length === mostFixes) break
    const pattern = candidate.edit(sheet)
    if (pattern === sheet) continue
    const after = counted(check(workPattern(pattern, work)))
    const removes = (after.get(rule) ?? 0) < (before.get(rule) ?? 0)
    if (removes && [...after].every(([other, count]) => count <= (before.get(other) ?? 0)))
      good.push(candidate)
  }
  return good
}
