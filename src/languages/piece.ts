import type { Direction } from '../loom/direction'
import type { BindOff, CastOn } from '../loom/move'
import type { Stitch } from '../stitches/stitch'
import type { Unit } from './unit'

/** What a piece says beside what its charts say. Pegs are numbered from 1. */
export interface PiecePhrases {
  readonly castOnHeading: string
  readonly bindOffHeading: string
  readonly plainHeading: Readonly<Record<Unit, string>>
  readonly secondHeading: string
  readonly castOn: (how: CastOn, loops: number, where: EdgePlace) => string
  readonly castOnWay: (how: CastOn, loops: number, where: EdgePlace, forBaby: boolean) => string
  readonly bindOff: (how: BindOff, loops: number, where: EdgePlace) => string
  /** How it is done; `goesOn`: other loops are left that the yarn works after it. */
  readonly bindOffWay: (how: BindOff, goesOn: boolean, halves: Halves) => string
  /** Said below a way to bind off that needs a new length of yarn. */
  readonly newYarn: string
  readonly workChart: (name: string, rows: string, times: number, again: boolean) => string
  readonly noChart: (name: string) => string
  /** "1st and 3rd time:" */
  readonly whichTimes: (times: readonly number[]) => string
  readonly plain: (stitch: Stitch, kind: Unit, rows: number, length: string | null) => string
  readonly plainToLength: (stitch: Stitch, kind: Unit, length: string) => string
  readonly onAllPegs: (way: 'round' | 'open ring' | 'bar', pegs: number, again: boolean) => string
  readonly onSomePegs: (first: number, last: number, othersWait: boolean) => string
  readonly leftOut: (rows: number, most: number) => string
  readonly alikeSecond: string
  readonly mirroredSecond: (numbering: PegsOfSecond) => string
  /** How the pegs of the second are numbered, said with the second itself; null: as those of the first. */
  readonly secondPegs: (numbering: PegsOfSecond) => string | null
  readonly weaveIn: string
}

/** How the pegs of the mirrored second of a pair are numbered. */
export interface PegsOfSecond {
  readonly shape: 'ring' | 'bar'
  readonly pegs: number
  /** The other way than those of the first: then its work goes the other way too. */
  readonly turned: boolean
  readonly direction: Direction
}

/** The pegs of the two halves that are joined, each in the order in which it is worked, 0-based. */
export interface Halves {
  readonly near: readonly number[]
  readonly far: readonly number[]
  /** Pegs that still hold the double stitch of a German turn, 0-based. */
  readonly doubled: readonly number[]
}

/** Where an edge is worked: the whole ring or bar, or a run of its pegs; in the order it is worked. */
export interface EdgePlace {
  readonly whole: boolean
  /** Has it two ends? The whole of a ring has none. */
  readonly open: boolean
  /** The ends of its pegs. */
  readonly first: number
  readonly last: number
  /** Where it begins inside its pegs and goes round them: the peg it begins at and its last one. */
  readonly round: readonly [first: number, last: number] | null
}
