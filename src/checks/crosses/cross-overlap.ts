import { paint } from '../../pattern/edits/paint'
import { fix } from '../mending'
import type { RowRule } from '../rule'
import { noteBroken } from './whole'

export const crossOverlap: RowRule = {
  id: 'cross-overlap',
  title: 'Cross overlaps its neighbour',
  severity: 'error',
  explain: 'Every peg belongs to one stitch: a cross may not lie over the stitch beside it.',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'overlap',
      ({ item }) => `${item.stitch.width} pegs and has ${item.columns}`,
      'Give the cross all its pegs, or move one of the two stitches.',
      (_, { item }, row) => [
        fix(`Give it all its ${item.stitch.width} pegs`, (pattern) =>
          paint(pattern, item.stitch.id, row, item.column),
        ),
      ],
    ),
}
