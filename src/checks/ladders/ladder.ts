import { chartOn } from '../../pattern/charts'
import { withRow } from '../../pattern/edits/chart'
import type { Layout } from '../../pattern/layout'
import type { Pattern, Run } from '../../pattern/pattern'
import { isBackAndForth } from '../../pattern/pegs/inWork'
import { inFirstCopy } from '../copies'
import { fix, type Fix } from '../../pattern/finding'
import { nothing } from '../nothing'
import type { ChartView, Noted, PlacedNote, Rule } from '../rule'
import type { Setting } from '../setting'
import { inEachRepeat, rowNamed } from '../wording'
import { followLadders, isFromBefore, widthOf, type Ladder } from './follow'
import { atJoin, nonePassed } from '../../pattern/pegs/passedEmpty'
import { decimal } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

function check(view: ChartView): readonly PlacedNote[] {
  const { work, setting, passed } = view
  if (passed.every((runs) => runs === nonePassed)) return nothing
  const flat = setting.shape === 'ring' && isBackAndForth(work.pattern, work.name)
  const list = work.firstRuns.map(({ after }, row) => ({
    after,
    passed: (passed[row] ?? nothing).filter((run) => !flat || !atJoin(run, setting.pegs)),
  }))
  return (
    followLadders(list)
      // What the step before left empty is told of the piece.
      .filter(
        (one) => inFirstCopy(work.layout, one.pegs.from) && !isFromBefore(one, work.run.start),
      )
      .map((ladder) => ({ row: ladder.first, noted: note(view, ladder) }))
  )
}

function note({ work, setting }: ChartView, { pegs, widest, widestAt }: Ladder): Noted {
  const { layout } = work
  const placed = { from: pegs.from, to: Math.min(pegs.to, setting.pegs - 1) }
  const later = work.firstRuns[widestAt]
  const grows = widthOf(widest) > widthOf(pegs)
  return {
    pegs: placed,
    say: (row) => {
      const now = `${row}: the yarn passes ${emptyNamed(pegs, setting)}, ${lengthOf(pegs, setting)}`
      const then =
        grows && later
          ? `, and ${widthOf(widest)} pegs by ${rowNamed(later, setting, work.numbers[widestAt] ?? 0)} (${decimal(lengthIn(widest, setting))} mm)`
          : ''
      return `${now}${then}; ${whatShows(setting)}${inEachRepeat(layout, pegs.from)}.`
    },
    advice: whatToDo(work.pattern),
    mend: (row) => [makeAgain(layout, placed, row)],
  }
}

/** "2 empty pegs (5-6)". Pegs may count on over the join of the round. */
export function emptyNamed(pegs: Run, { pegs: inLoom }: Setting): string {
  const count = widthOf(pegs)
  const { from, to } = pegs
  const over = to >= inLoom
  const names = over
    ? `${pegsNamed({ from, to: inLoom - 1 })} and ${pegsNamed({ from: 0, to: to - inLoom })}`
    : pegsNamed(pegs)
  return count === 1 ? `empty ${names}` : `${count} empty pegs (${names})`
}

/** mm from the loop before the empty pegs to the loop after them. */
const lengthIn = (pegs: Run, { pitch }: Setting): number => (widthOf(pegs) + 1) * pitch

export const lengthOf = (pegs: Run, setting: Setting): string =>
  `${decimal(lengthIn(pegs, setting))} mm from loop to loop`

export const whatShows = ({ forBaby }: Setting): string =>
  forBaby
    ? 'this leaves a ladder that small fingers can catch in'
    : 'this leaves a ladder in the fabric'

/** Loops cannot be moved together on the pegs of a loom without leaving others empty. */
export const whatToDo = ({ steps }: Pattern): string => {
  const last = steps.findLast(({ kind }) => kind !== 'note')
  return last?.kind === 'bind off' && last.how === 'gather'
    ? 'Gather the top sooner, before two empty pegs lie side by side.'
    : 'Fill the pegs again with yarn overs, or decrease where no two empty pegs come side by side.'
}

/** A yarn over on each of the pegs, which is knitted where there was no stitch in the rows above. */
const makeAgain = (layout: Layout, pegs: Run, row: number): Fix =>
  fix(`Fill ${pegsNamed(pegs)} again with yarn overs`, (pattern) =>
    [...new Set(layout.columnOf.slice(pegs.from, pegs.to + 1))].reduce(
      (made, column) => beginAgain(made, row, column),
      pattern,
    ),
  )

function beginAgain(pattern: Pattern, from: number, column: number): Pattern {
  let made = pattern
  const { rows } = chartOn(pattern)
  for (let row = from; row < rows.length; row++) {
    const cells = rows[row]?.cells
    if (cells?.[column]?.role !== 'no stitch') return made
    made = withRow(made, row, {
      cells: cells.with(column, pattern.vocabulary.withRole(row === from ? 'yarn over' : 'knit')),
    })
  }
  return made
}

/** Common practice: the common fault of crowns on looms. */
export const ladder: Rule = {
  id: 'ladder',
  title: 'Ladder over empty pegs',
  severity: 'warning',
  scope: 'chart',
  check,
}
