import type { RowRule } from '../rule'
import { moveInside, noteBroken, startElsewhere } from './whole'

/** A cross lies wholly inside one repeat (design rule of this house, common practice). */
export const crossRepeatEdge: RowRule = {
  id: 'cross-repeat-edge',
  title: 'Cross over the edge of its repeat',
  severity: 'error',
  explain:
    'A cross has to lie wholly inside one repeat: where copies meet, or where the edge begins, its other pegs belong to another stitch.',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'repeat',
      ({ item }) =>
        `runs over the edge of the repeat and needs ${item.stitch.width} columns inside it`,
      'Shift the repeat so that the cross lies wholly inside it, or move the cross.',
      (_, piece, row) => [
        ...startElsewhere('the repeat', piece, row),
        ...moveInside(piece, row, piece.item.stitch.width),
      ],
    ),
}
