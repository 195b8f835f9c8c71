import { paint } from '../../pattern/edits/paint'
import { inFirstCopy } from '../copies'
import { fix, type Fix } from '../../pattern/finding'
import { paintLooks } from '../mending'
import { nothing } from '../nothing'
import type { RowRule, RowView } from '../rule'
import { inEachRepeat } from '../wording'
import { standardVocabulary } from '../../stitches/vocabulary'
import { crossesIn, type Crossed } from './crossed'
import { columnsBelow, plainGroups } from './groups'
import { termOf } from '../../languages/languages'
import { counted, decimal } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** Strain = pegs moved x pitch: 2/2 at 9.5 mm is 19 mm each way (common practice). */
export const crossTight: RowRule = {
  id: 'cross-tight',
  title: 'Cross too tight',
  severity: 'warning',
  scope: 'row',
  check: (view) => {
    const { longestCross, pitch, terms } = view.setting
    const crosses = crossesIn(view.run)
    if (crosses.length === 0) return nothing
    return crosses
      .filter(({ peg }) => inFirstCopy(view.layout, peg))
      .filter(({ cross }) => Math.max(cross.front, cross.back) * pitch > longestCross)
      .map((crossed) => {
        const { peg, stitch, cross } = crossed
        const moved = Math.max(cross.front, cross.back)
        const pegs = { from: peg, to: peg + stitch.width - 1 }
        return {
          pegs,
          say: (row) =>
            `${row}: ${termOf(stitch, terms).abbr} on ${pegsNamed(pegs)} moves loops ${counted(moved, 'peg')}, ${decimal(moved * pitch)} mm; the limit is ${decimal(longestCross)} mm${inEachRepeat(view.layout, peg)}.`,
          advice: whatToDo(Math.floor(longestCross / pitch)),
          mend: (row) => crossFewer(view, crossed, row),
        }
      })
  },
}

const whatToDo = (most: number): string =>
  most < 1
    ? 'On this loom every cross goes beyond the limit: use a finer loom, or raise the limit.'
    : `Cross fewer loops: on this loom at most ${most} over ${most}. Or use a finer loom.`

/** The same lean with fewer loops, in the middle; the loops beside are worked as they look. */
function crossFewer({ setting, layout }: RowView, { peg, cross }: Crossed, row: number): Fix[] {
  const { longestCross, pitch, direction, terms } = setting
  const most = Math.floor(longestCross / pitch)
  const column = layout.columnOf[peg]
  if (most < 1 || column === undefined) return []
  const smaller = {
    ...cross,
    front: Math.min(cross.front, most),
    back: Math.min(cross.back, most),
  }
  const found = standardVocabulary.findCross(smaller)
  if (!found) return []
  const low = column + columnsBelow(cross, smaller, direction)
  const looks = plainGroups(cross, direction, 'after')
  return [
    fix(`Cross fewer loops: ${termOf(found, terms).abbr}`, (pattern) =>
      paint(paintLooks(looks, row, column)(pattern), found, row, low),
    ),
  ]
}
