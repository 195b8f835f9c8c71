import { firstPerColumn } from '../copies'
import type { Run } from '../../pattern/pattern'
import type { Fix } from '../finding'
import { fix, paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowRule, RowView } from '../rule'
import { babyFloat, mostPegsPassed } from '../../pattern/floats'
import type { Setting } from '../setting'
import { counted, inEachRepeat, listed, millimetres, pegsNamed } from '../wording'

/** A float's length is counted as the pegs it passes times the distance of the pegs. */
export const float: RowRule = {
  id: 'float',
  title: 'Long float inside',
  severity: 'warning',
  explain: `A strand that lies loose behind many pegs catches on fingers and toes; for a baby the limit is ${babyFloat.pegs} pegs and ${babyFloat.length} mm.`,
  scope: 'row',
  check: (view) => {
    const { run, layout } = view
    if (run.faults.length === 0) return nothing
    const most = mostPegsPassed(view.setting)
    const faults = run.faults.flatMap((fault) =>
      fault.kind === 'float' && fault.pegs > most ? [fault] : [],
    )
    return firstPerColumn(faults, layout).map(({ peg, pegs }) => noteFloat(view, peg, pegs, most))
  },
}

function noteFloat(view: RowView, caught: number, passed: number, most: number): Noted {
  const { setting, layout } = view
  const pegs = passedPegs(view, caught, passed)
  const float = `${counted(passed, 'peg')}, ${millimetres(passed * setting.pitch)} mm`
  return {
    pegs,
    say: (row) =>
      `${row}: the yarn floats inside past ${float}, before it is caught on peg ${caught + 1}; ${limitNamed(most, setting)}${inEachRepeat(layout, caught)}.`,
    advice:
      most === 0
        ? 'Slip no peg here: knit it, or tuck the yarn on it.'
        : `Catch the yarn after ${most === 1 ? '1 peg' : `at most ${most} pegs`}: knit or tuck a peg in between.`,
    mend: (row) => catchBetween(view, pegs, most, row),
  }
}

function limitNamed(most: number, { forBaby }: Setting): string {
  const limit = most === 0 ? 'slip no peg' : `at most ${counted(most, 'peg')}`
  return forBaby
    ? `for a baby ${limit}, so that fingers and toes are not caught`
    : `this pattern allows ${most === 0 ? 'no float' : limit}`
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
  const every = layout.columnOf.slice(pegs.from, pegs.to + 1)
  const knitAll = fix(`Knit ${pegsNamed(pegs)}`, paintColumns('k', row, every))
  if (most === 0)
    return [knitAll, fix(`Tuck the yarn on ${pegsNamed(pegs)}`, paintColumns('tuck', row, every))]
  const list: number[] = []
  for (let peg = pegs.from + most; peg <= pegs.to; peg += most + 1) list.push(peg)
  if (run.heading === 'back') list.forEach((peg, i) => (list[i] = pegs.from + pegs.to - peg))
  const columns = list.map((peg) => layout.columnOf[peg] ?? 0)
  const name =
    list.length === 1 ? `peg ${(list[0] ?? 0) + 1}` : `pegs ${listed(list.map((peg) => peg + 1))}`
  return [
    fix(`Knit ${name} in between`, paintColumns('k', row, columns)),
    fix(`Tuck the yarn on ${name}`, paintColumns('tuck', row, columns)),
    knitAll,
  ]
}
