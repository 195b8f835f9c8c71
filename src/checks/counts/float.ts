import { firstPerColumn } from '../copies'
import type { Fault } from '../../loom/loom'
import type { Run } from '../../pattern/pattern'
import { fix, type Fix } from '../../pattern/finding'
import { paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowRule, RowView } from '../rule'
import { mostPegsPassed } from '../../pattern/floats'
import type { Setting } from '../setting'
import { inEachRepeat } from '../wording'
import { counted, decimal } from '../../languages/english/forms'
import { namePegs, pegsNamed } from '../../languages/english/pegs'

/**
 * A float's length is counted as the pegs it passes times the distance of the pegs. In front it is part of the
 * design, except in things for babies: a long bar outside catches as well (common practice).
 */
export const float: RowRule = {
  id: 'float',
  title: 'Long float',
  severity: 'warning',
  scope: 'row',
  check: (view) => {
    const { run, layout } = view
    if (run.faults.length === 0) return nothing
    const most = mostPegsPassed(view.setting)
    const faults = run.faults.flatMap((fault) =>
      fault.kind === 'float' &&
      fault.pegs > most &&
      (fault.side === 'inside' || view.setting.forBaby)
        ? [fault]
        : [],
    )
    return firstPerColumn(faults, layout).map((fault) => noteFloat(view, fault, most))
  },
}

type Float = Extract<Fault, { kind: 'float' }>

function noteFloat(view: RowView, fault: Float, most: number): Noted {
  const { setting, layout } = view
  const { peg: caught, pegs: passed } = fault
  const pegs = passedPegs(view, caught, passed)
  const lies = fault.side === 'inside' ? 'floats inside behind' : 'runs loose across'
  const float = `${lies} ${counted(passed, 'peg')} (${decimal(passed * setting.pitch)} mm of the loom)`
  // At a slip on the other side the yarn only goes there, and is not held.
  const slipped = view.run.row.sites.find(({ peg }) => peg === caught)?.stitch.passes === true
  const held = slipped
    ? `before it changes sides at peg ${caught + 1}`
    : `before peg ${caught + 1} catches it`
  return {
    pegs,
    say: (row) =>
      `${row}: the yarn ${float} ${held}${inEachRepeat(layout, caught)}. ${limitNamed(most, setting)}.`,
    advice:
      most === 0
        ? 'Slip no peg here: knit it, or tuck the yarn on it.'
        : `Knit or tuck a peg in between, so that the yarn is caught after ${most === 1 ? '1 peg' : `${most} pegs at most`}.`,
    mend: (row) => catchBetween(view, pegs, most, row),
  }
}

function limitNamed(most: number, { forBaby }: Setting): string {
  const limit = `no more than ${counted(most, 'peg')}`
  return forBaby
    ? `For a baby, slip ${most === 0 ? 'no peg' : limit}: fingers and toes can catch`
    : `This pattern allows ${most === 0 ? 'no float' : limit}`
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
  const knitAll = fix(`Knit ${pegsNamed(pegs)}`, paintColumns('knit', row, every))
  if (most === 0)
    return [knitAll, fix(`Tuck the yarn on ${pegsNamed(pegs)}`, paintColumns('tuck', row, every))]
  const list: number[] = []
  for (let peg = pegs.from + most; peg <= pegs.to; peg += most + 1) list.push(peg)
  if (run.heading === 'back') list.forEach((peg, i) => (list[i] = pegs.from + pegs.to - peg))
  const columns = list.map((peg) => layout.columnOf[peg] ?? 0)
  const name = namePegs(list)
  return [
    fix(`Knit ${name} in between`, paintColumns('knit', row, columns)),
    fix(`Tuck the yarn on ${name}`, paintColumns('tuck', row, columns)),
    knitAll,
  ]
}
