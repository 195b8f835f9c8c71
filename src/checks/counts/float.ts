import { firstPerColumn } from '../copies'
import type { Run } from '../../pattern/pattern'
import type { Fix } from '../finding'
import { fix, paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowRule, RowView } from '../rule'
import type { Setting } from '../setting'
import { counted, inEachRepeat, listed, pegsNamed } from '../wording'

/** Inside baby things: at most two pegs and about a centimetre (common practice). */
const babyPegs = 2
const babyLength = 10

const limitOf = ({ forBaby, longestFloat, pitch }: Setting): number =>
  forBaby ? Math.min(longestFloat, babyPegs, Math.floor(babyLength / pitch)) : longestFloat

/** A float's length is counted as the pegs it passes times the distance of the pegs. */
export const float: RowRule = {
  id: 'float',
  title: 'Long float inside',
  severity: 'warning',
  explain:
    'A strand that lies loose behind many pegs catches on fingers and toes; for babies the limit is two pegs and 10 mm.',
  scope: 'row',
  check: (view) => {
    const { run, layout } = view
    if (run.faults.length === 0) return nothing
    const most = limitOf(view.setting)
    const faults = run.faults.flatMap((fault) =>
      fault.kind === 'float' && fault.pegs > most ? [fault] : [],
    )
    return firstPerColumn(faults, layout).map(({ peg, pegs }) => noteFloat(view, peg, pegs, most))
  },
}

function noteFloat(view: RowView, caught: number, passed: number, most: number): Noted {
  const { setting, layout } = view
  const pegs = passedPegs(view, caught, passed)
  const length = Math.round(passed * setting.pitch * 10) / 10
  const limit = `${setting.forBaby ? `for babies at most ${babyPegs} pegs and ${babyLength} mm, so that fingers and toes are not caught` : `the limit is ${counted(most, 'peg')}`}`
  return {
    pegs,
    say: (row) =>
      `${row}: the yarn floats inside past ${counted(passed, 'peg')}, ${length} mm, before it is caught on peg ${caught + 1}; ${limit}${inEachRepeat(layout, caught)}.`,
    advice: `Catch the yarn after at most ${counted(most, 'peg')}: knit or tuck a peg in between.`,
    mend: (row) => catchBetween(view, pegs, most, row),
  }
}

/** The pegs passed in this row; the peg that catches when all were passed before it. */
function passedPegs({ run: { row, heading } }: RowView, caught: number, passed: number): Run {
  const pegs =
    heading === 'forward'
      ? { from: Math.max(row.from, caught - passed), to: caught - 1 }
      : { from: caught + 1, to: Math.min(row.to, caught + passed) }
  return pegs.from > pegs.to ? { from: caught, to: caught } : pegs
}

function catchBetween({ run, layout }: RowView, pegs: Run, most: number, row: number): Fix[] {
  const list: number[] = []
  for (let peg = pegs.from + most; peg <= pegs.to; peg += most + 1) list.push(peg)
  if (run.heading === 'back') list.forEach((peg, i) => (list[i] = pegs.from + pegs.to - peg))
  const columns = list.map((peg) => layout.columnOf[peg] ?? 0)
  const name =
    list.length === 1 ? `peg ${(list[0] ?? 0) + 1}` : `pegs ${listed(list.map((peg) => peg + 1))}`
  return [
    fix(`Knit ${name} in between`, paintColumns('k', row, columns)),
    fix(`Tuck the yarn on ${name}`, paintColumns('tuck', row, columns)),
    fix(
      `Knit ${pegsNamed(pegs)}`,
      paintColumns('k', row, layout.columnOf.slice(pegs.from, pegs.to + 1)),
    ),
  ]
}
