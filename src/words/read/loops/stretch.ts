import type { Heading } from '../../../loom/direction'
import type { RowEnd } from '../../../loom/row'
import type { Run } from '../../../pattern/pattern'
import type { Role } from '../../../stitches/stitch'
import type { Ambiguity, PegsItem, StitchItem, TurnItem } from '../nodes'
import type { ReadStitch, TextRange } from '../reading'

/** How the words that have several meanings are taken: which option of each. */
export type Taken = Readonly<Partial<Record<Ambiguity, number>>>

/** What the ambiguous words can stand for, the first unless the counts say otherwise. */
export const options: Readonly<Record<Exclude<Ambiguity, 'ask-times'>, readonly (Role | null)[]>> =
  {
    'ask-yfwd': ['yarn over', null],
    'ask-inc': ['knit twice', 'make left'],
    'ask-ds': ['knit'],
    'ask-k1b': ['e-wrap'],
  }

/** Why a row does not come out. */
export type Trouble =
  | {
      readonly kind: 'repeat'
      readonly block: number
      readonly copies: number
      readonly over: number
    }
  | { readonly kind: 'short'; readonly loops: number }
  | { readonly kind: 'over'; readonly loops: number }
  /** A row that turns goes over the join of a ring: loops up to it, and beyond. */
  | { readonly kind: 'join'; readonly loops: number; readonly over: number }

/** One real row as it is told; ranges count from the start of its words. */
export interface RowTold extends Readonly<Omit<RowUnderWay, 'first' | 'last' | 'mixed'>> {
  readonly end: RowEnd
  readonly turn: TurnItem | null
  /** Loops that are left where words are not known, which those do not make up; 0 for none. */
  readonly unread: number
  /** Of a row that is too long: the loops that its words take; null: they cannot be counted. */
  readonly needs: number | null
}

/** Is it a row of needles as its wrong side looks, and which of its items cannot be shown as said. */
export interface NeedleSide {
  readonly wrong: boolean
  /** Are the words for needles: do the sides change from row to row? */
  readonly needles: boolean
  /** Which row of its fabric's cycle is worked, from 0. */
  readonly row: number
  readonly unknown: Set<StitchItem>
}

/** What is known of the row that is being worked out. */
export interface RowUnderWay {
  readonly stitches: ReadStitch[]
  takes: number
  makes: number
  /** Loops there are for it. */
  loops: number
  goes: Heading
  /** Pegs it names. */
  run: Run | null
  /** Pegs named first and last. */
  first: PegsItem | null
  last: PegsItem | null
  /** It is not told by peg numbers alone. */
  mixed: boolean
  /** Loops taken up to the join of the ring, where pegs are named on both sides of it. */
  joinedAt: number | null
  trouble: Trouble | null
  /** A peg that is named, where another one is next. */
  pegTrouble: { readonly range: TextRange; readonly named: number; readonly next: number } | null
  /** Words in it that stand for nothing known. */
  gaps: number
  /** Loops that words that are not known may stand for. */
  gapLoops: number
  tooLong: boolean
}

export const rowBegun = (goes: Heading, loops: number): RowUnderWay => ({
  stitches: [],
  takes: 0,
  makes: 0,
  loops,
  goes,
  run: null,
  first: null,
  last: null,
  mixed: false,
  joinedAt: null,
  trouble: null,
  pegTrouble: null,
  gaps: 0,
  gapLoops: 0,
  tooLong: false,
})
