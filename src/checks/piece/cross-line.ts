import type { PatternRun } from '../../pattern/work'
import type { StepWork } from '../../pattern/workPiece'
import type { PieceNote, PieceRule } from '../rule'
import { stepNamed } from './steps'
import { counted, lowerFirst } from '../../languages/english/forms'

/** First pegs of the crosses in a row, in rising order, with their widths. */
const crossesOf = ({ row }: PatternRun): { readonly peg: number; readonly width: number }[] =>
  row.sites
    .filter(({ stitch }) => stitch.cross)
    .map(({ peg, stitch }) => ({ peg, width: stitch.width }))

const withCrosses = ({ rows }: StepWork): readonly PatternRun[] =>
  rows?.rows.filter((run) => crossesOf(run).length > 0) ?? []

/**
 * By how many pegs the crosses of one row are out of line with those of another: of the same widths
 * in the same order, all shifted alike by less than a cross. Null where they cannot be compared.
 */
function offsetOf(a: PatternRun, b: PatternRun): number | null {
  const [those, these] = [crossesOf(a), crossesOf(b)]
  const offset = (these[0]?.peg ?? 0) - (those[0]?.peg ?? 0)
  const alike =
    those.length === these.length &&
    those.every(
      ({ peg, width }, index) => these[index]?.width === width && these[index].peg - peg === offset,
    )
  return alike && Math.abs(offset) < (those[0]?.width ?? 0) ? offset : null
}

/** After a heel, or from one chart to the next, crosses go on over the same pegs. */
export const crossLine: PieceRule = {
  id: 'piece-cross-line',
  title: 'Crosses out of line',
  severity: 'warning',
  scope: 'piece',
  check: (work) => {
    const notes: PieceNote[] = []
    let last: { readonly run: PatternRun; readonly index: number } | null = null
    work.steps.forEach((step, index) => {
      const crossing = withCrosses(step)
      const [first] = crossing
      const end = crossing.at(-1)
      if (!first || !end) return
      const offset = last && offsetOf(last.run, first)
      if (last && offset !== null && offset !== 0)
        notes.push({
          step: index,
          message: `The crosses of ${lowerFirst(stepNamed(work, index))} stand ${counted(Math.abs(offset), 'peg')} ${offset > 0 ? 'after' : 'before'} those of ${lowerFirst(stepNamed(work, last.index))}.`,
          advice: 'Start the round elsewhere in one of the two charts, so that they stand in line.',
        })
      last = { run: end, index }
    })
    return notes
  },
}
