/** Lines of stitches on a real loom, without a chart: rows may make more or fewer loops. */
import type { Heading } from '../../src/loom/direction'
import { loomRow, type LoomRow } from '../../src/loom/row'
import { castOn, type LoomState } from '../../src/loom/state'
import { emptyStack } from '../../src/loom/strand'
import { workRow, type Habits, type RowRun } from '../../src/loom/work'
import type { Stitch } from '../../src/stitches/stitch'
import { stitchOf } from '../../src/stitches/vocabulary'
import { columnsOf, takesOf } from './notation'

export const habits: Habits = {
  shape: 'ring',
  direction: 'clockwise',
  knit: 'u-wrap',
  crossing: 'move then knit',
  transfer: 'ordered',
}

/** A loom with `loops` loops on its first pegs and the others free. */
export function loomWith(loops: number, pegs: number): LoomState {
  const full = castOn(pegs)
  return { ...full, stacks: full.stacks.map((stack, peg) => (peg < loops ? stack : emptyStack)) }
}

/** Stitches in working order on pegs `from`..`to`; what is left of the run has no stitch. */
export function rowOn(
  stitches: readonly Stitch[],
  from: number,
  to: number,
  heading: Heading,
): LoomRow<Stitch> {
  const free = Math.max(0, to - from + 1 - columnsOf(stitches))
  const none = Array.from({ length: free }, () => stitchOf('none'))
  let peg = heading === 'forward' ? from : to + 1
  const sites = [...stitches, ...none].map((stitch) => {
    const lowest = heading === 'forward' ? peg : peg - stitch.width
    peg += heading === 'forward' ? stitch.width : -stitch.width
    return { stitch, peg: lowest }
  })
  if (heading === 'back') sites.reverse()
  return loomRow(sites, from, to, heading, 'on')
}

/**
 * Work stitches of a flat piece from where the yarn is, then turn without laying anything: as far along the loom
 * as they take loops, or have columns.
 */
export function workFromYarn(
  state: LoomState,
  stitches: readonly Stitch[],
  heading: Heading,
): RowRun {
  const step = heading === 'forward' ? 1 : -1
  const start = heading === 'forward' ? state.yarn.gap : state.yarn.gap - 1
  const takes = takesOf(stitches)
  let end = start
  let found = 0
  for (; end >= 0 && end < state.stacks.length; end += step) {
    if (state.stacks[end] !== emptyStack) found++
    if (found === takes && Math.abs(end - start) + 1 >= columnsOf(stitches)) break
  }
  const row = rowOn(stitches, Math.min(start, end), Math.max(start, end), heading)
  return workRow(state, row, { ...habits, shape: 'bar' })
}

export const loopsOn = ({ stacks }: LoomState, from = 0, to = stacks.length - 1): number =>
  stacks.slice(from, to + 1).filter((stack) => stack !== emptyStack).length

/** Loops that a row with this heading left unworked ahead of the yarn. */
export const unworkedAhead = (state: LoomState, heading: Heading): number =>
  heading === 'forward' ? loopsOn(state, state.yarn.gap) : loopsOn(state, 0, state.yarn.gap - 1)
