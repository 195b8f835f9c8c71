import type { Finding, Severity } from '../pattern/finding'
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

const rank: Record<Severity, number> = { error: 0, warning: 1, hint: 2 }

/** By severity, then row (the whole chart first), then peg, then rule. */
export function byPlace(a: Finding, b: Finding): number {
  return (
    rank[a.severity] - rank[b.severity] ||
    (a.place.rows[0] ?? -1) - (b.place.rows[0] ?? -1) ||
    (a.place.pegs[0]?.from ?? -1) - (b.place.pegs[0]?.from ?? -1) ||
    (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
  )
}
