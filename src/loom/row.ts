import { bisector } from 'd3-array'
import type { Heading } from './direction'
import type { StitchMoves } from './move'

/** Which habit crosses are worked by (common practice); a pattern setting. */
export const crossings = ['knit then move', 'move then knit'] as const
export type Crossing = (typeof crossings)[number]

/** How decreases are stacked: so that the right loop shows, or simply on top; a pattern setting. */
export const transfers = ['ordered', 'plain'] as const
export type Transfer = (typeof transfers)[number]

/** Moves that are others the other way round, and by the other habit of crossing. */
export interface MovesByWay {
  readonly rightToLeft: Readonly<Record<Crossing, StitchMoves>>
  readonly leftToRight: Readonly<Record<Crossing, StitchMoves>>
}

/** What the loom must know of a stitch. */
export interface Worked {
  /** Pegs with loops that it uses up, and pegs with loops that it leaves. */
  readonly takes: number
  readonly makes: number
  /** Chart columns, that is pegs, it stands on. */
  readonly width: number
  /** Of several loops worked as one, the one that must lie lowest, as the right side is seen. */
  readonly shows?: 'left' | 'middle' | 'right'
  /** The yarn goes past its pegs without being caught there. */
  readonly passes?: true
  /** The moves, once the loops it takes stand on its pegs. */
  readonly moves: StitchMoves | MovesByWay
}

/** One stitch at its place. `peg` is its lowest peg. */
export interface Site<S extends Worked = Worked> {
  readonly stitch: S
  readonly peg: number
}

export const rowEnds = ['on', 'German turn', 'wrap'] as const
/** How a row ends: work goes on, or turns back in one of two ways. */
export type RowEnd = (typeof rowEnds)[number]

/** A row laid on the pegs of one loom. The same object stands for the same row, always. */
export interface LoomRow<S extends Worked = Worked> {
  /** In rising peg order, covering every peg from `from` to `to`. */
  readonly sites: readonly Site<S>[]
  readonly from: number
  readonly to: number
  readonly takes: number
  readonly makes: number
  /** Every stitch takes and leaves a loop on each of its pegs: none is moved, none begins or ends. */
  readonly steady: boolean
  /** null: as the row before leaves it. */
  readonly heading: Heading | null
  readonly end: RowEnd
}

/** Sum up a row that covers pegs `from`..`to`. */
export function loomRow<S extends Worked>(
  sites: readonly Site<S>[],
  from: number,
  to: number,
  heading: Heading | null,
  end: RowEnd,
): LoomRow<S> {
  let takes = 0
  let makes = 0
  let steady = true
  for (const { stitch } of sites) {
    takes += stitch.takes
    makes += stitch.makes
    if (stitch.takes !== stitch.width || stitch.makes !== stitch.width) steady = false
  }
  return { sites, from, to, takes, makes, steady, heading, end }
}

/** Searches sites, which stand in rising order, for the first from a peg on. */
export const sitesByPeg = bisector(({ peg }: Site) => peg)
