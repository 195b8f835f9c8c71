import type { Heading } from '../loom/direction'
import type { RowEnd } from '../loom/row'
import type { Stitch } from '../stitches/stitch'

/** Rows, columns and pegs are numbered from 0 here, from 1 for people. */
export interface Chart {
  /** Columns in peg order: column 0 holds peg 1. */
  readonly columns: number
  /** The columns worked again and again; those before and after it are worked once. */
  readonly repeat: Run | null
  /** Rows worked several times. Bands do not overlap and stand in rising order. */
  readonly bands: readonly Band[]
  /** Row 0 is worked first. 1 to 600. */
  readonly rows: readonly Row[]
}

/** A chart of a pattern, with what is said of it. */
export interface NamedChart {
  readonly name: string
  readonly chart: Chart
  /** The designer's own words, kept letter by letter; null: the words are written from the chart. */
  readonly words: string | null
  /** Single findings set aside, by their id. */
  readonly aside: readonly string[]
}

/** Both ends included, 0-based. */
export interface Run {
  readonly from: number
  readonly to: number
}

export interface Band extends Run {
  /** 2 to 99 in all. */
  readonly times: number
}

/** The stitch that begins here; null where one goes on. */
export type Cell = Stitch | null

/**
 * One row of the chart. `cells` has one entry per column: the stitch in its lowest column, null in its
 * other columns.
 */
export interface Row {
  readonly cells: readonly Cell[]
  /** The pegs it covers; null for all. */
  readonly run: Run | null
  /** null: goes on from the row before (a bar turns at its edges, a turn turns). */
  readonly heading: Heading | null
  readonly end: RowEnd
}
