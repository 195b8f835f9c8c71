import type { Direction } from '../loom/direction'
import type { Knit, Move } from '../loom/move'
import type { Site, Worked } from '../loom/row'
import type { Moment } from '../loom/walk'
import type { Terms } from './terms'
import type { Stitch } from '../stitches/stitch'

/** What the sentences must know beside the loom itself. */
export interface HandsContext {
  readonly shape: 'ring' | 'bar'
  readonly direction: Direction
  /** The pattern's own way to knit; another way is named. */
  readonly knit: Knit
  readonly terms: Terms
  /** Say which way several pegs are worked: where that is not known from the sentences before. */
  readonly saysWay?: boolean
}

/** One move that was done, between the loom before it and the loom after it. */
export interface Done<M extends Move = Move> {
  readonly move: M
  readonly before: Moment
  readonly after: Moment
}

export type DoneOf<D extends Move['do']> = Done<Move & { readonly do: D }>

const isStitch = (worked: Worked): worked is Stitch => 'id' in worked && 'family' in worked

/** The stitch of a site of a pattern row; null for the row's own moves. */
export function stitchAt(site: Site | null): Stitch | null {
  return site && isStitch(site.stitch) ? site.stitch : null
}

const upTo = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, index) => from + index)

/**
 * The pegs, 0-based, that the yarn passes when it is carried, in the order it passes them. A stitch
 * begins at its own first gap, wherever the yarn was left before it.
 */
export function pegsPassed({ move, before, after }: DoneOf<'carry'>): number[] {
  const { site, heading } = after
  const starts = site && site !== before.site
  const from = !starts
    ? before.gap
    : heading === 'forward'
      ? site.peg
      : site.peg + site.stitch.width
  return move.gap > from ? upTo(from, move.gap) : upTo(move.gap, from).reverse()
}

/** Every peg, 0-based, that a move names, in the order it names them. */
export function pegsOfMove(done: Done): number[] {
  const { move } = done
  switch (move.do) {
    case 'move':
    case 'draw':
      return [move.from, move.to]
    case 'carry':
      return pegsPassed({ ...done, move })
    case 'turn':
      return []
    default:
      return [move.peg]
  }
}

/** What is said of the moves of the hands, a sentence for each step. */
export interface HandsPhrases {
  /** One sentence for moves that are done alike, one after the other. */
  readonly moves: (list: readonly Done[], context: HandsContext) => string
  /** The same in a few words, to stand in a list of moves: "knit pegs 1 to 4". */
  readonly inShort: (list: readonly Done[], context: HandsContext) => string
  /** What several moves belong to: "2/2 left cross on pegs 5 to 8". Pegs are 0-based, in working order. */
  readonly stitch: (stitch: Stitch, pegs: readonly number[], context: HandsContext) => string
  /** The heading of moves that belong to no stitch: a turn, or an edge. */
  readonly edge: (moment: Moment) => string
  readonly inNextRound: (sentence: string) => string
  readonly sameAgain: string
  /** The last `steps` steps are done so many times more; on facing pegs up to those in `to`. */
  readonly again: (steps: number, more: number, where: Again) => string
}

/** Where steps are done again: from a peg on to another one, or inwards on facing pegs. 0-based. */
export type Again =
  { readonly from: number; readonly to: number } | { readonly inwardsTo: readonly number[] }
