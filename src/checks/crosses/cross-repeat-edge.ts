import type { RowRule, RowView } from '../rule'
import { startElsewhere } from './start'
import { moveInside, noteBroken } from './whole'

/** Nothing stands beside the repeat: where it starts, the round starts. */
const goesRound = ({ layout: { shape, copyRuns }, row: { cells } }: RowView): boolean =>
  shape === 'ring' && copyRuns.every(({ from, to }) => to - from + 1 === cells.length)

/** A cross lies wholly inside one repeat (design rule of this house, common practice). */
export const crossRepeatEdge: RowRule = {
  id: 'cross-repeat-edge',
  title: 'Cross over the edge of its repeat',
  severity: 'error',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'repeat',
      ({ item }) => `${item.stitch.width} pegs inside it`,
      'Knit these pegs instead, move the cross, or start the repeat where it cuts no cross.',
      (piece, row, plain) => [
        ...startElsewhere(goesRound(view) ? 'the round' : 'the repeat'),
        plain,
        ...moveInside(piece, row, piece.item.stitch.width),
      ],
    ),
}
