import { severities, type Finding, type Severity } from './finding'

/** What the checks found. */
export interface Report {
  /** Errors first, then by place. */
  readonly findings: readonly Finding[]
  /** Findings that were set aside, in the same order. */
  readonly aside: readonly Finding[]
}

export function countBySeverity({ findings }: Report): Record<Severity, number> {
  const counts: Record<Severity, number> = { error: 0, warning: 0, hint: 0 }
  for (const { severity } of findings) counts[severity]++
  return counts
}

const rank = new Map(severities.map((severity, index) => [severity, index]))

/** By severity, then row (the whole chart first), then peg, then rule. */
export function byPlace(a: Finding, b: Finding): number {
  return (
    (rank.get(a.severity) ?? 0) - (rank.get(b.severity) ?? 0) ||
    (a.place.row ?? -1) - (b.place.row ?? -1) ||
    (a.place.pegs?.from ?? -1) - (b.place.pegs?.from ?? -1) ||
    (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
  )
}
