import type { Fix, Notice } from '../../pattern/finding'
import type { Run } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import type { Reading, TextFix, TextRange } from '../read/reading'

export const agreements = ['same', 'differs', 'missing', 'unread'] as const
/**
 * What the words say of a chart row: the same, something else, nothing; or there is a line for it,
 * or for another time of it, of which nothing could be read.
 */
export type Agreement = (typeof agreements)[number]

/** A repair of the chart (take the words') or of the words (take the chart's). */
export type DifferenceFix = Fix | TextFix

export const differenceRules = [
  'words-differ',
  'turn-differs',
  'row-missing-in-words',
  'row-missing-in-chart',
  'knit-differs',
  'direction-differs',
  'pegs-differ',
] as const
export type DifferenceRule = (typeof differenceRules)[number]

/** Is it the rule of a difference, not of a remark? */
export const isDifference = (rule: string): rule is DifferenceRule =>
  differenceRules.some((one) => one === rule)

/** One thing that words and chart say differently. */
export interface Difference extends Notice {
  readonly rule: DifferenceRule
  /** The first chart row it is about, 0-based; null: the whole chart, or a row it does not have. */
  readonly row: number | null
  /** All of them: rows of one line of the words, or a run of missing rows. */
  readonly rows: readonly number[]
  /** Index into `Reading.rows` of the first row; null: the words do not have it. */
  readonly read: number | null
  /** First place, 0-based; null: the whole row. */
  readonly pegs: Run | null
  /** Every place in the row. */
  readonly places: readonly Run[]
  /** Where the words say it, or where they would have to (an empty range); null: nowhere. */
  readonly range: TextRange | null
  /** Is the advice the reason why the chart cannot take what the words say? */
  readonly isRefused: boolean
  /** Made and tried out when someone looks. */
  readonly fixes: readonly DifferenceFix[]
  /** Why it is mended in the words alone, in the chart alone or in neither; null: both can be. */
  readonly lacking: string | null
}

/** A row of the words and the working of a chart row that belong together; null: there is none. */
export interface RowPair {
  /** Index into `Reading.rows`. */
  readonly read: number | null
  /** Index into `Work.passes`. */
  readonly pass: number | null
}

export interface Comparison {
  readonly reading: Reading
  readonly work: Work
  /** In the order of the rows; those of the whole chart first. */
  readonly differences: readonly Difference[]
  /** One per chart row. */
  readonly agreement: readonly Agreement[]
  /** Both lists of rows, each once and in order. */
  readonly pairs: readonly RowPair[]
}
