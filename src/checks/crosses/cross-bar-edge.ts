import type { Fix } from '../../pattern/finding'
import type { RowRule } from '../rule'
import { left, moveInside, noteBroken, type CutCross } from './whole'

const advice = 'Move the cross in until all its pegs are in the row.'
const inward = (piece: CutCross, row: number, plain: Fix) =>
  moveInside(piece, row, piece.item.stitch.width).toSpliced(2, 0, plain)

export const crossBarEdge: RowRule = {
  id: 'cross-bar-edge',
  title: 'Cross past the edge',
  severity: 'error',
  scope: 'row',
  check: (view) => [
    ...noteBroken(
      view,
      'bar edge',
      ({ item, pegs }) => `${item.stitch.width} pegs, and ${left(pegs)} left before the edge`,
      advice,
      inward,
    ),
    ...noteBroken(
      view,
      'run edge',
      ({ item }) => `${item.stitch.width} pegs inside the row`,
      advice,
      inward,
    ),
  ],
}
