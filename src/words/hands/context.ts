import type { Direction } from '../../loom/direction'
import type { Knit, Move } from '../../loom/move'
import type { Site, Worked } from '../../loom/row'
import type { Moment } from '../../loom/walk'
import type { Pattern } from '../../pattern/pattern'
import type { Terms } from '../../languages/terms'
import type { Stitch } from '../../stitches/stitch'

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

export const handsContext = (
  { loom, making, style }: Pick<Pattern, 'loom' | 'making' | 'style'>,
  terms: Terms = style.terms,
): HandsContext => ({ shape: loom.shape, direction: loom.direction, knit: making.knit, terms })

/** One move that was done, between the loom before it and the loom after it. */
export interface Done<M extends Move = Move> {
  readonly move: M
  readonly before: Moment
  readonly after: Moment
}

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
export function pegsPassed({ move, before, after }: Done<Move & { do: 'carry' }>): number[] {
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
