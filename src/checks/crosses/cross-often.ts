import { fix } from '../../pattern/finding'
import { chartOn } from '../../pattern/charts'
import type { Direction } from '../../loom/direction'
import { emptyStack } from '../../loom/strand'
import { withChart } from '../../pattern/edits/chart'
import { putRows } from '../../pattern/edits/rows'
import type { Layout } from '../../pattern/layout'
import type { Cell, Row, Sheet } from '../../pattern/pattern'
import { placed, type Placed } from '../../pattern/row'
import type { PatternRun } from '../../pattern/work'
import { inFirstCopy } from '../copies'
import { paintLooks } from '../mending'
import { memo } from '../../pattern/memo'
import { nothing } from '../nothing'
import type { Noted, RowDigest, Rule } from '../rule'
import { inEachRepeat } from '../wording'
import type { Role, Stitch } from '../../stitches/stitch'
import type { Vocabulary } from '../../stitches/vocabulary'
import type { Crossed } from './crossed'
import { plainGroups } from './groups'
import type { Setting } from '../setting'
import { termOf } from '../../languages/languages'
import { counted } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'
import { unitOfRow } from '../../pattern/unit'

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

/** Which cross of a row has moved a wale. */
const byWale = memo((crosses: readonly Crossed[]): ReadonlyMap<number, Crossed> => {
  const found = new Map<number, Crossed>()
  for (const crossed of crosses) for (const wale of crossed.wales) found.set(wale, crossed)
  return found
})

/** The one on the lowest pegs that has moved any of these. */
function firstOf(
  wales: readonly number[],
  moved: ReadonlyMap<number, Crossed>,
): Crossed | undefined {
  let first: Crossed | undefined
  for (const wale of wales) {
    const crossed = moved.get(wale)
    if (crossed && (!first || crossed.peg < first.peg)) first = crossed
  }
  return first
}

function noteOften(
  digest: RowDigest,
  crossed: Crossed,
  around: readonly (RowDigest | undefined)[],
): Noted | null {
  const { setting, layout, run } = digest
  for (let plain = 0; plain < around.length - 1; plain++) {
    const crosses = around[around.length - 2 - plain]?.crosses ?? nothing
    const earlier = crosses === nothing ? undefined : firstOf(crossed.wales, byWale(crosses))
    if (!earlier) continue
    const need = wanted(setting, earlier)
    if (plain >= need) return null
    const unit = unitOfRow(run, setting.shape)
    const { peg, stitch } = crossed
    const pegs = { from: peg, to: peg + stitch.width - 1 }
    return {
      pegs,
      say: (row) =>
        `${row}: ${termOf(stitch, setting.terms).abbr} on ${pegsNamed(pegs)} follows ${termOf(earlier.stitch, setting.terms).abbr} after ${plain === 0 ? `no plain ${unit}` : counted(plain, `plain ${unit}`)}; there should be ${need}${inEachRepeat(layout, peg)}.`,
      advice: `Work ${counted(need - plain, `more plain ${unit}`)} between the two, or set fewer for this pattern.`,
      mend: (row) => mend(digest, crossed, row, need - plain),
    }
  }
  return null
}

function mend({ setting, layout, run }: RowDigest, crossed: Crossed, row: number, count: number) {
  const { peg, stitch, cross } = crossed
  const pegs = { from: peg, to: peg + stitch.width - 1 }
  const more = counted(count, `plain ${unitOfRow(run, setting.shape)}`)
  const looks = plainGroups(cross, setting.direction, 'after')
  const added = plainRow(run, layout, setting.direction)
  return [
    fix(`Add ${more} before this one`, (pattern) => addRows(pattern, row, count, added, 'before')),
    fix(`Add ${more} before this one, each time`, (pattern) =>
      addRows(pattern, row, count, added, 'inside'),
    ),
    fix(
      `Work ${pegsNamed(pegs)} without crossing`,
      paintLooks(looks, row, layout.columnOf[peg] ?? 0),
    ),
  ]
}

type PlainRow = (row: Row, vocabulary: Vocabulary) => Row

/** A row before the one that is worked in `run`: each loop that is there is worked as it looks. */
function plainRow({ before }: PatternRun, { columnOf }: Layout, direction: Direction): PlainRow {
  const plainAt = (
    { stitch, columns, column }: Placed,
    withRole: (role: Role) => Stitch,
  ): Cell[] => {
    const { cross, look } = stitch
    if (cross && columns === stitch.width)
      return plainGroups(cross, direction, 'before').map(withRole)
    return Array.from({ length: columns }, (_, offset) => {
      const peg = columnOf.indexOf(column + offset)
      if (peg >= 0 && before.stacks[peg] === emptyStack) return withRole('no stitch')
      if (stitch.family === 'knit and purl') return stitch
      return withRole(look === 'purl' || look === 'purl decrease' ? 'purl' : 'knit')
    })
  }
  return (row, vocabulary) => ({
    ...row,
    cells: placed(row).flatMap((item) => plainAt(item, (role) => vocabulary.withRole(role))),
    end: 'on',
  })
}

/** Where a band begins with the row, rows are added before the band or inside it; elsewhere there is one way. */
function addRows(
  pattern: Sheet,
  row: number,
  count: number,
  plain: PlainRow,
  where: 'before' | 'inside',
): Sheet {
  const crossing = chartOn(pattern).rows[row]
  if (!crossing) return pattern
  const rows = Array.from({ length: count }, () => plain(crossing, pattern.vocabulary))
  if (where === 'before') return putRows(pattern, row, rows)
  const band = chartOn(pattern).bands.findIndex(({ from }) => from === row)
  const made = band < 0 ? pattern : putRows(pattern, row, rows)
  return made === pattern
    ? pattern
    : withChart(made, {
        bands: chartOn(made).bands.map((other, index) =>
          index === band ? { ...other, from: row } : other,
        ),
      })
}

/** Which strand is where is followed through the run, so a plait is judged strand by strand. */
export const crossOften: Rule = {
  id: 'cross-often',
  title: 'Crosses too close together',
  severity: 'warning',
  scope: 'near',
  of: 'workings',
  reach: ({ rowsBetweenCrosses }) => ({
    before: rowsBetweenCrosses === 'habit' ? mostByHabit : rowsBetweenCrosses,
    after: 0,
  }),
  check,
}
