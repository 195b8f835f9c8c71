import { fix } from '../../pattern/finding'
import { landing, paint } from '../../pattern/edits/paint'
import type { Sheet } from '../../pattern/pattern'
import type { Placed } from '../../pattern/row'
import type { RowRule } from '../rule'
import { noteBroken } from './whole'
import { pegsNamed } from '../../languages/english/pegs'

export const crossOverlap: RowRule = {
  id: 'cross-overlap',
  title: 'Cross overlaps its neighbour',
  severity: 'error',
  scope: 'row',
  check: (view) =>
    noteBroken(
      view,
      'overlap',
      ({ item }) => `${item.stitch.width} pegs and has ${item.columns}`,
      'Give the cross all its pegs, or move one of the two stitches.',
      ({ item, pegs: { from } }, row, plain) => [
        fix(`Give it ${pegsNamed({ from, to: from + item.stitch.width - 1 })}`, (pattern) =>
          meetsAnother(pattern, item, row)
            ? pattern
            : paint(pattern, item.stitch, row, item.column),
        ),
        plain,
      ],
    ),
}

/** Another stitch of several columns would go: that is for a person to choose. */
function meetsAnother(pattern: Sheet, { stitch, column }: Placed, row: number): boolean {
  const where = landing(pattern, stitch, row, column)
  return !where.can || where.replaces.filter(({ width }) => width > 1).length > 1
}
