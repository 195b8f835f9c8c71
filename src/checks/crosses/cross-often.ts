import { duplicateRows } from '../../pattern/edits/rows'
import { withCells, withRow } from '../../pattern/edits/chart'
import type { Direction } from '../../loom/direction'
import type { Pattern, Row } from '../../pattern/pattern'
import { placed } from '../../pattern/row'
import { inFirstCopy } from '../copies'
import { fix, paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowDigest, Rule } from '../rule'
import { counted, inEachRepeat, pegsNamed, unitOf } from '../wording'
import type { Crossed } from './crossed'
import type { Setting } from '../setting'

/**
 * Plain rows wanted after a cross of so many pegs: three after a four-peg cross, five after a
 * six-peg one, and a two-peg cross may come every second row (common practice).
 */
const habit = (pegs: number): number => (pegs < 4 ? 1 : pegs < 6 ? 3 : 5)
const mostByHabit = 5

const wanted = ({ rowsBetweenCrosses }: Setting, { stitch }: Crossed): number =>
  rowsBetweenCrosses === 'habit' ? habit(stitch.width) : rowsBetweenCrosses

/** Looks back from a row to the rows worked before it. */
function check(around: readonly (RowDigest | undefined)[]): readonly Noted[] {
  const here = around[around.length - 1]
  if (!here || here.crosses.length === 0) return nothing
  const notes: Noted[] = []
  for (const crossed of here.crosses) {
    if (!inFirstCopy(here.layout, crossed.peg)) continue
    const note = noteOften(here, crossed, around)
    if (note) notes.push(note)
  }
  return notes
}

function noteOften(
  { setting, layout, run }: RowDigest,
  crossed: Crossed,
  around: readonly (RowDigest | undefined)[],
): Noted | null {
  const wales = new Set(crossed.wales)
  const unit = unitOf(run, setting)
  for (let plain = 0; plain < around.length - 1; plain++) {
    const earlier = around[around.length - 2 - plain]?.crosses.find((other) =>
      other.wales.some((wale) => wales.has(wale)),
    )
    if (!earlier) continue
    const need = wanted(setting, earlier)
    if (plain >= need) return null
    const { peg, stitch } = crossed
    const pegs = { from: peg, to: peg + stitch.width - 1 }
    const columns = Array.from({ length: stitch.width }, (_, i) => (layout.columnOf[peg] ?? 0) + i)
    return {
      pegs,
      say: (row) =>
        `${row}: ${stitch[setting.terms].abbr} on ${pegsNamed(pegs)} follows ${earlier.stitch[setting.terms].abbr} after ${plain === 0 ? `no plain ${unit}` : counted(plain, `plain ${unit}`)}; there should be ${need}${inEachRepeat(layout, peg)}.`,
      advice: `Work ${counted(need - plain, `more plain ${unit}`)} between the two, or set fewer for this pattern.`,
      mend: (row) => [
        fix(`Add ${counted(need - plain, `plain ${unit}`)} before this one`, (pattern) =>
          insertPlain(pattern, row, need - plain),
        ),
        fix(`Knit ${pegsNamed(pegs)} without crossing`, paintColumns('k', row, columns)),
      ],
    }
  }
  return null
}

/** Plain rows in front of a row, each loop worked as it looks in that row. */
function insertPlain(pattern: Pattern, row: number, count: number): Pattern {
  let made = pattern
  for (let i = 0; i < count; i++) {
    if (made.chart.rows.length !== pattern.chart.rows.length + i) return pattern
    made = duplicateRows(made, row + i, row + i)
    const copied = made.chart.rows[row + i]
    if (!copied) return pattern
    const [plain] = withCells([copied], (_, of) => plainCells(of, pattern.loom.direction))
    made = withRow(made, row + i, { ...plain, end: 'on' })
  }
  return made
}

/** Before the row is worked: a yarn over has no loop yet, a cross still has its groups in place. */
function plainCells(row: Row, direction: Direction): string[] {
  return placed(row).flatMap(({ stitch, columns }) => {
    const all = (id: string, count = columns) => Array.from({ length: count }, () => id)
    if (stitch.takes === 0) return all('none')
    if (!stitch.cross) return all(stitch.look === 'purl' ? 'p' : 'k')
    const { front, back, lean, frontTexture, backTexture } = stitch.cross
    const groups = [
      all(frontTexture === 'purl' ? 'p' : 'k', front),
      all(backTexture === 'purl' ? 'p' : 'k', back),
    ]
    const frontIsLow = (lean === 'left') === (direction === 'clockwise')
    return (frontIsLow ? groups : groups.reverse()).flat().slice(0, columns)
  })
}

/** Which strand is where is followed through the run, so a plait is judged strand by strand. */
export const crossOften: Rule = {
  id: 'cross-often',
  title: 'Crosses too close together',
  severity: 'warning',
  explain:
    'Crossed loops need plain rounds to relax: usually three after a four-peg cross and five after a six-peg one; a two-peg cross may come every second round.',
  scope: 'near',
  of: 'workings',
  reach: ({ rowsBetweenCrosses }) => ({
    before: rowsBetweenCrosses === 'habit' ? mostByHabit : rowsBetweenCrosses,
    after: 0,
  }),
  check,
}
