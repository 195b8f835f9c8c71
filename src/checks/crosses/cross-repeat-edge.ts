import type { RowRule } from '../rule'
import { moveInside, noteBroken, startElsewhere } from './whole'

/** A cross lies wholly inside one repeat (design rule of this house, common practice). */
export const crossRepeatEdge: RowRule = {
  id: 'cross-repeat-edge',
  title: 'Cross over the edge of its repeat',
  severity: 'error',
  explain:
    'A cross has to lie inside one repeat: where repeats meet, or the edge begins, its other pegs belong to another stitch.',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'repeat',
      ({ item }) => `${item.stitch.width} pegs inside it`,
      'Shift the repeat so that the whole cross lies inside it, or move the cross.',
      (_, piece, row) => [
        ...startElsewhere('the repeat', piece, row),
        ...moveInside(piece, row, piece.item.stitch.width),
      ],
    ),
}
