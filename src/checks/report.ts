import { severities, type Finding, type Severity } from './finding'
import type { Known } from './gather'

/** What the checks found. */
export interface Report {
  /** Errors first, then by place. */
  readonly findings: readonly Finding[]
  /** Findings that were set aside, in the same order. */
  readonly aside: readonly Finding[]
  /** Kept, so that the next version is checked from it. */
  readonly known: Known
}

export function countBySeverity({
  findings,
}: {
  readonly findings: readonly { readonly severity: Severity }[]
}): Record<Severity, number> {
  const counts: Record<Severity, number> = { error: 0, warning: 0, hint: 0 }
  for (const { severity } of findings) counts[severity]++
  return counts
}

/** "2 errors, 1 warning": the worst first; "none" where there are none. */
export function countsSaid(counts: Readonly<Record<Severity, number>>): string {
  const said = severities
    .filter((severity) => counts[severity] > 0)
    .map((severity) => `${counts[severity]} ${severity}${counts[severity] === 1 ? '' : 's'}`)
  return said.join(', ') || 'none'
}

const rank: Record<Severity, number> = { error: 0, warning: 1, hint: 2 }

/** By severity, then row (the whole chart first), then peg, then rule. */
export function byPlace(a: Finding, b: Finding): number {
  return (
    rank[a.severity] - rank[b.severity] ||
    (a.place.row ?? -1) - (b.place.row ?? -1) ||
    (a.place.pegs?.from ?? -1) - (b.place.pegs?.from ?? -1) ||
    (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
  )
}
