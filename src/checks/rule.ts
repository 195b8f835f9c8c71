import type { Fix, Message, Severity } from '../pattern/finding'
import type { Layout } from '../pattern/layout'
import type { NamedChart, Row, Run } from '../pattern/pattern'
import type { PatternRun, Work } from '../pattern/work'
import type { PieceWork } from '../pattern/workPiece'
import type { Crossed } from './crosses/crossed'
import type { RowLook } from './look'
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
  /** How each chart row stands to turns; the same list as long as none of them changed. */
  readonly turnings: readonly (Turning | null)[]
  /** Runs of empty pegs that the yarn passes in each chart row; see `passedEmpty`. */
  readonly passed: readonly (readonly Run[])[]
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
  /**
   * What the first row finds otherwise than the chart has it, since steps before led the yarn away or bound
   * loops off: the piece tells that, with what to do.
   */
  readonly startsWith?: 'yarn' | 'loops'
}

/** How many rows before and after a row a rule looks at. */
export interface Reach {
  readonly before: number
  readonly after: number
}

/** What a rule has noticed of the piece as a whole. */
export interface PieceNote extends Message {
  /** 0-based; null: the whole piece. */
  readonly step: number | null
  /** Repairs that are offered as they are. */
  readonly fixes?: readonly Fix[]
  /** Repairs to try; only those that work out are offered. */
  readonly tries?: readonly Fix[]
}

/**
 * A row rule looks at one row and is asked again only when that row is worked anew; a near rule
 * looks at its neighbours too and is asked again when one of these is. A chart rule is asked after
 * every edit, so it must not go through all the rows. A piece rule looks at what lies between charts.
 */
export type Rule =
  | (RuleHead & { readonly scope: 'row'; readonly check: (view: RowView) => readonly Noted[] })
  | (RuleHead & {
      readonly scope: 'near'
      /** Chart rows, each as it is first worked; or the rows as they are worked, bands unrolled. */
      readonly of: 'rows' | 'workings'
      readonly reach: (setting: Setting) => Reach
      /** `around[before]` is the row itself; undefined past either end. */
      readonly check: (around: readonly (RowDigest | undefined)[]) => readonly Noted[]
      /** Does this matter, seen from the whole chart? Asked after every edit. */
      readonly stands?: (noted: Noted, row: number, digests: readonly RowDigest[]) => boolean
    })
  | (RuleHead & {
      readonly scope: 'chart'
      readonly check: (view: ChartView) => readonly PlacedNote[]
    })
  | (RuleHead & {
      readonly scope: 'piece'
      /** It says what other rules found, and is not switched off by itself. */
      readonly always?: true
      /** `errorsIn`: messages of the errors of a chart, where they are not told elsewhere. */
      readonly check: (
        work: PieceWork,
        errorsIn: (chart: NamedChart) => readonly string[],
      ) => readonly PieceNote[]
    })

export type RowRule = Extract<Rule, { scope: 'row' }>
export type NearRule = Extract<Rule, { scope: 'near' }>
export type ChartRule = Extract<Rule, { scope: 'chart' }>
export type PieceRule = Extract<Rule, { scope: 'piece' }>

/** What the rules know of one worked row. The same object as long as the row is worked the same. */
export interface RowDigest {
  readonly run: PatternRun
  readonly layout: Layout
  readonly setting: Setting
  readonly notes: readonly RuleNote[]
  readonly look: RowLook
  readonly crosses: readonly Crossed[]
  /** null: a row over all the pegs that does not turn. */
  readonly turning: Turning | null
  /** Runs of empty pegs that the yarn passes. */
  readonly passed: readonly Run[]
}

export interface RuleNote {
  readonly rule: RowRule
  readonly noted: Noted
}
