import type { RowRule } from '../rule'
import { startElsewhere } from './start'
import { left, noteBroken } from './whole'

/** Over the join a cross meets loops that are one round apart (common practice). */
export const crossJoin: RowRule = {
  id: 'cross-join',
  title: 'Cross over the end of the round',
  severity: 'error',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'join',
      ({ item, pegs }) => `${item.stitch.width} pegs, and ${left(pegs)} left before peg 1`,
      'Knit these pegs instead, or start the round where it cuts no cross.',
      (_, __, plain) => [...startElsewhere('the round'), plain],
    ),
}
