import type { RowRule, RowView } from '../rule'
import { moveInside, noteBroken, type Piece } from './whole'

const advice = 'Move the cross inward until all its pegs are in the row.'
const inward = (_: RowView, piece: Piece, row: number) =>
  moveInside(piece, row, piece.item.stitch.width)

export const crossBarEdge: RowRule = {
  id: 'cross-bar-edge',
  title: 'Cross past the edge',
  severity: 'error',
  explain:
    'Past the edge of a flat piece, or past the last peg that a short row works, there are no loops to cross.',
  scope: 'row',
  check: (view) => [
    ...noteBroken(
      view,
      'bar edge',
      ({ item, pegs }) =>
        `runs past the edge of the piece: it needs ${item.stitch.width} pegs and ${pegs.to - pegs.from + 1} are left before the edge`,
      advice,
      inward,
    ),
    ...noteBroken(
      view,
      'run edge',
      ({ item }) =>
        `runs past the pegs that this row works: it needs ${item.stitch.width} pegs inside them`,
      advice,
      inward,
    ),
  ],
}
