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
  /** What the chart is made from; null: its rows are the designer's own. While it is there, the chart is what it makes. */
  readonly wish: ShortRowWish | null
  /** The designer's own words, kept letter by letter; null: the words are written from the chart. */
  readonly words: string | null
  /** Single findings set aside, by their id. */
  readonly aside: readonly string[]
}

export const shortRowShapes = ['heel', 'toe', 'wedge'] as const
export const shortRowSides = ['both', 'first', 'last'] as const
export const shortRowTurns = ['German turn', 'wrap'] as const satisfies readonly RowEnd[]

/** What short rows should be like. Pegs are 0-based. */
export interface ShortRowWish {
  /**
   * heel: in and out again, a cup; toe: the same, but it ends with its last short row, to be grafted; wedge: in
   * only, then all are taken in.
   */
  readonly shape: (typeof shortRowShapes)[number]
  readonly turn: (typeof shortRowTurns)[number]
  /** The pegs it lies on. */
  readonly run: Run
  /** Pegs turned at each side. */
  readonly turned: number
  /** From one turned peg to the next. */
  readonly step: number
  /** At which ends of the run work turns: both, or on a bar the first or the last peg only. */
  readonly sides: (typeof shortRowSides)[number]
  /** A heel turns once more on the peg beyond each end, so that no hole stays. */
  readonly closeCorners: boolean
  /**
   * What the other pegs go on with: the cells of two rounds over all the pegs, of which the second is for the last
   * row. null: plain knit.
   */
  readonly beside: readonly [readonly Cell[], readonly Cell[]] | null
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
