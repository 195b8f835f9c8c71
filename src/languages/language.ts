import type { Direction } from '../loom/direction'
import type { BindOff, CastOn, Knit } from '../loom/move'
import type { Crossing, Transfer } from '../loom/row'
import type { Cross, CutBy, Stitch } from '../stitches/stitch'
import type { BookletPhrases } from './booklet'
import type { DrawingPhrases } from './drawings'
import type { Gauge } from './gauge'
import type { HandsPhrases } from './hands'
import type { PiecePhrases } from './piece'
import type { Term } from './terms'
import type { TotalsPhrases } from './totals'
import type { Unit } from './unit'

/** A turn at the end of a row; the peg is numbered from 1, or null where there is none. */
export type Turn = { readonly end: 'German turn' | 'wrap'; readonly peg: number | null }

/** The words that dialects have in common use for the same thing. */
export interface DialectWords {
  readonly castOn: string
  readonly bindOff: string
  readonly gauge: string
  readonly clockwise: Readonly<Record<Direction, string>>
}

/** One way of speaking a language: its terms for stitches, and its own words. */
export interface Dialect {
  /** BCP 47 language tag. */
  readonly tag: string
  /** Are sizes of shoes told in the British way as well? */
  readonly tellsUkSizes: boolean
  readonly words: DialectWords
  /** Stitches that it calls otherwise than the language does, by id. */
  readonly terms: ReadonlyMap<string, Term>
  readonly cross: (cross: Cross) => Term
}

/** What becomes of pegs that a stitch empties, numbered from 1 in working order. */
export interface EmptiedPhrases {
  readonly left: (pegs: readonly number[]) => string
  readonly filled: (pegs: readonly number[], from: 'after' | 'before') => string
  readonly open: (pegs: readonly number[]) => string
  /** The name of the way in which all emptied pegs are filled. */
  readonly noneLeft: (abbr: string) => string
}

export interface Abbreviated {
  readonly abbr: string
  readonly name: string
  readonly steps: string
}

/** All that is said in one language, in one of its dialects. */
export interface Language {
  /** BCP 47 language tag. */
  readonly tag: string
  readonly words: DialectWords
  readonly booklet: BookletPhrases
  readonly piece: PiecePhrases
  readonly hands: HandsPhrases
  readonly totals: TotalsPhrases
  readonly drawings: DrawingPhrases
  /** What a stitch of the vocabulary, or what is left of one, is called. */
  readonly term: (stitch: Stitch) => Term
  /** Other spellings in use, lower case. */
  readonly also: (stitch: Stitch) => readonly string[]
  /** What the hands do, in one sentence; empty for a stitch whose moves are told one by one. */
  readonly steps: (stitch: Stitch) => string
  /** What cuts a stitch. */
  readonly cut: Readonly<Record<CutBy, string>>
  readonly label: (kind: Unit, from: number, to: number) => string
  /** "12 rounds" */
  readonly rows: (rows: number, kind: Unit) => string
  readonly allKnit: string
  readonly allPurl: string
  /** The stitches of a whole row as a sentence; a word for all of them begins it. */
  readonly wholeRow: (stitches: string) => string
  readonly times: (times: number) => string
  readonly repeatToEnd: string
  readonly repeatToLast: (stitches: number) => string
  readonly as: (label: string) => string
  readonly stitches: (count: number) => string
  readonly repeatRows: (label: string, more: number) => string
  /** Where rows are repeated often: up to so many in all, or up to the row of that label. */
  readonly repeatUntil: (label: string, kind: Unit, rows: number) => string
  readonly repeatTo: (label: string, last: string) => string
  readonly inAll: (kind: Unit, rows: number, stitches: number | null) => string
  readonly pegs: (first: number, last: number, goingBack: boolean) => string
  readonly turn: (turn: Turn) => string
  /** How each turn is made, and what becomes of its strand. */
  readonly turnSteps: Readonly<Record<'German turn' | 'wrap', Abbreviated>>
  /** Moves over so many pegs: each way in which a stitch is used, with a name where it needs one. */
  readonly movesOver: (
    pegs: number,
    ways: readonly { readonly label: string | null; readonly moves: string }[],
  ) => string
  readonly emptied: EmptiedPhrases
  readonly knitSteps: (name: string, steps: string) => string
  readonly rightToLeft: string
  readonly leftToRight: string
  /** Words of instructions that are abbreviated beside the stitches, and how each shows in a line. */
  readonly abbreviations: readonly (Term & { readonly shows: RegExp })[]
  readonly headings: Readonly<
    Record<'about' | 'abbreviations' | 'notes' | 'instructions' | 'finishing' | 'cautions', string>
  >
  readonly direction: (shape: 'ring' | 'bar', direction: Direction) => string
  readonly rightSide: string
  readonly knitMeans: (abbr: string, knit: Knit) => string
  readonly crossing: Readonly<Record<Crossing, string>>
  readonly transfer: Readonly<Record<Transfer, string>>
  /** For babies; takes how many pegs the yarn may pass before it is caught. */
  /** `ladders`: strands lie over empty pegs in this piece. */
  readonly cautions: (mostPassed: number, ladders: boolean) => readonly string[]
  /** How a chart alone is begun and ended. */
  readonly start: (how: CastOn, pegs: number, shape: 'ring' | 'bar') => string
  readonly finish: (how: BindOff) => string
  /** The gauge is measured in the plain knit of the pattern: among other facts, and as a line. */
  readonly gauge: (gauge: Gauge, knit: Knit) => string
  readonly gaugeLine: (gauge: Gauge, knit: Knit) => string
}
