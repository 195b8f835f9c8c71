import type { Layout } from '../pattern/layout'
import type { Row, Run } from '../pattern/pattern'
import type { PatternRun, Work } from '../pattern/work'
import type { Crossed } from './crosses/crossed'
import type { Fix, Severity } from './finding'
import type { Setting } from './setting'
import type { Turning } from './turns/turning'

/** What a rule has noticed, before it has its place in the chart and its row's name. */
export interface Noted {
  /** 0-based; null: the whole row. */
  readonly pegs: Run | null
  /** One sentence with the numbers in it. `row` is the row's name with its number: "Round 7". */
  readonly say: (row: string) => string
  readonly advice: string
  /** Repairs to try for chart row `row` (0-based); only those that work out are offered. */
  readonly mend?: (row: number) => readonly Fix[]
}

/** One worked row, as a row rule sees it. What it notes may depend on nothing else. */
export interface RowView {
  readonly run: PatternRun
  readonly row: Row
  readonly layout: Layout
  readonly setting: Setting
}

/** The whole piece, as a chart rule sees it. */
export interface ChartView {
  readonly work: Work
  readonly setting: Setting
  /** What is known of each chart row, first time it is worked. */
  readonly digests: readonly RowDigest[]
  /** What is known of one working of a row: bands unrolled, as in `work.passes`. */
  readonly digestAt: (pass: number) => RowDigest | undefined
}

/** 0-based chart row; null: the whole chart. */
export interface PlacedNote {
  readonly row: number | null
  readonly noted: Noted
}

interface RuleHead {
  /** Stands in files (rules off, findings set aside): never change one. */
  readonly id: string
  readonly title: string
  readonly severity: Severity
  /** Why it matters, for people. */
  readonly explain: string
}

/**
 * A row rule looks at one row and is asked again only when that row is worked anew. A chart rule is
 * asked after every edit, so it must go by the digests and skip rows that do not matter to it.
 */
export type Rule =
  | (RuleHead & { readonly scope: 'row'; readonly check: (view: RowView) => readonly Noted[] })
  | (RuleHead & {
      readonly scope: 'chart'
      readonly check: (view: ChartView) => readonly PlacedNote[]
    })

export type RowRule = Extract<Rule, { scope: 'row' }>

/** What the rules know of one worked row. The same object as long as the row is worked the same. */
export interface RowDigest {
  readonly run: PatternRun
  readonly layout: Layout
  readonly setting: Setting
  readonly notes: readonly RuleNote[]
  readonly crosses: readonly Crossed[]
  /** null: a row over all the pegs that does not turn. */
  readonly turning: Turning | null
}

export interface RuleNote {
  readonly rule: RowRule
  readonly noted: Noted
}
