import { workPattern, type Work } from '../pattern/work'
import type { Finding, Fix } from './finding'

/** At most so many ways are offered for one finding. */
const mostFixes = 3

type Check = (work: Work) => readonly Finding[]

const countByRule = (findings: readonly Finding[]): Map<string, number> => {
  const counts = new Map<string, number>()
  for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1)
  return counts
}

/**
 * Of the repairs tried for a finding of `rule`, those after which there is one finding less of that
 * rule and not one more of any other. Counted, since a repair may move rows and columns.
 */
export function thatWork(
  work: Work,
  rule: string,
  candidates: readonly Fix[],
  check: Check,
): readonly Fix[] {
  if (candidates.length === 0) return candidates
  const before = countByRule(check(work))
  const good: Fix[] = []
  for (const candidate of candidates) {
    if (good.length === mostFixes) break
    const pattern = candidate.edit(work.pattern)
    if (pattern === work.pattern) continue
    const after = countByRule(check(workPattern(pattern, work)))
    const removes = (after.get(rule) ?? 0) < (before.get(rule) ?? 0)
    if (removes && [...after].every(([id, count]) => count <= (before.get(id) ?? 0)))
      good.push(candidate)
  }
  return good
}
