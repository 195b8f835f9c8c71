import { rollup } from 'd3-array'
import { counted } from '../languages/english/forms'
import type { Run, Sheet } from './pattern'

export const severities = ['error', 'warning', 'hint'] as const
/** error: it cannot be worked or counts do not agree; warning: likely wrong; hint: good practice. */
export type Severity = (typeof severities)[number]

/** A part of a text: character offsets (UTF-16), `to` not included. */
export interface TextRange {
  readonly from: number
  readonly to: number
}

/** Where a finding is, 0-based. What it says nothing of is null or empty: the whole piece, chart or row. */
export interface Place {
  /** Of what is told of the piece; null: of the chart, or of the piece as a whole. */
  readonly step: number | null
  /** Chart rows, rising. */
  readonly rows: readonly number[]
  /** Pegs in each of these rows. */
  readonly pegs: readonly Run[]
  /** In the designer's own words. */
  readonly text: TextRange | null
  /** The row of these words whose label names it, where no chart row does. */
  readonly read: number | null
}

export const nowhere: Place = { step: null, rows: [], pegs: [], text: null, read: null }

/** A repair: an ordinary edit, with the words for its button. */
export interface Fix {
  readonly label: string
  readonly edit: (sheet: Sheet) => Sheet
}

export const fix = (label: string, edit: Fix['edit']): Fix => ({ label, edit })

/** Repairs that are tried one after the other: each costs a run of the piece. */
export interface Repairs {
  /** Those that work, of the ones that were tried. */
  readonly soFar: readonly Fix[]
  /** Try one more; false: there is none left. */
  readonly tryNext: () => boolean
}

/** What to read: one sentence that says what is wrong, with the numbers in it, and one what to do. */
export interface Message {
  readonly message: string
  readonly advice: string
}

/** What is said of something found, wherever it stands. */
export interface Notice extends Message {
  /** Id of the rule that found it. It stands in files: never change one. */
  readonly rule: string
  readonly severity: Severity
}

/** Something found: in a chart, in the whole piece or in the designer's own words. */
export interface Finding extends Notice {
  /** Stable while the same thing is wrong at the same place. */
  readonly id: string
  readonly place: Place
  /** All of them, tried out when someone looks. */
  readonly fixes: readonly Fix[]
  /** The same, for those who have no time to try all of them at once. */
  readonly repairs?: Repairs
  /** Why it cannot be mended in the words and in the chart alike; null: it can, or is not asked. */
  readonly lacking?: string | null
}

/** How many of each kind there are. */
export function countBySeverity(
  findings: readonly { readonly severity: Severity }[],
): Record<Severity, number> {
  const counts: Record<Severity, number> = { error: 0, warning: 0, hint: 0 }
  for (const { severity } of findings) counts[severity]++
  return counts
}

/** "2 errors, 1 warning": the worst first; "none" where there are none. */
export function countsSaid(counts: Readonly<Record<Severity, number>>): string {
  const said = severities
    .filter((severity) => counts[severity] > 0)
    .map((severity) => counted(counts[severity], severity))
  return said.join(', ') || 'none'
}

/** The worst first; what is as bad stays in its order. */
export const worstFirst = <T extends { readonly severity: Severity }>(list: readonly T[]): T[] =>
  severities.flatMap((severity) => list.filter((one) => one.severity === severity))

interface OfRule {
  readonly rule: string
}

/** Is there one finding less of that rule and not one more of any other? Counted: a repair may move rows. */
export function isMended(
  rule: string,
  before: readonly OfRule[],
  after: readonly OfRule[],
): boolean {
  const [was, now] = [perRule(before), perRule(after)]
  if ((now.get(rule) ?? 0) >= (was.get(rule) ?? 0)) return false
  return [...now].every(([other, count]) => count <= (was.get(other) ?? 0))
}

/** How many findings there are of each rule. */
export const perRule = (findings: readonly OfRule[]): ReadonlyMap<string, number> =>
  rollup(
    findings,
    ({ length }) => length,
    ({ rule }) => rule,
  )
