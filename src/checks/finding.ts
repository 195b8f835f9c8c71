import type { Run, Sheet } from '../pattern/pattern'

export const severities = ['error', 'warning', 'hint'] as const
/** error: it cannot be worked or counts do not agree; warning: likely wrong; hint: good practice. */
export type Severity = (typeof severities)[number]

/** Where a finding is. Rows, pegs and columns are 0-based; null: the whole chart, the whole row. */
export interface Place {
  readonly row: number | null
  readonly pegs: Run | null
}

/** A repair: an ordinary edit, with the words for its button. */
export interface Fix {
  readonly label: string
  readonly edit: (pattern: Sheet) => Sheet
}

export interface Finding {
  /** Stable while the same thing is wrong at the same place: rule, row, pegs. */
  readonly id: string
  readonly rule: string
  readonly severity: Severity
  readonly place: Place
  /** One sentence: what is wrong, with the numbers in it. */
  readonly message: string
  /** One sentence: what to do. */
  readonly advice: string
  readonly fixes: readonly Fix[]
}
