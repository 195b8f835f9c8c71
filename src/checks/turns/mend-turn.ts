import { chartOn } from '../../pattern/charts'
import type { Heading } from '../../loom/direction'
import { setHeading, setRun } from '../../pattern/edits/turning'
import type { Run, Sheet } from '../../pattern/pattern'
import { fix, type Fix } from '../../pattern/finding'
import type { Turning } from './turning'

const runThat = ({ heading, pegs, german }: Turning, turnPeg: number): Run => {
  const forward = heading === 'forward'
  const last = german ? turnPeg : forward ? turnPeg - 1 : turnPeg + 1
  return forward ? { from: pegs.from, to: last } : { from: last, to: pegs.to }
}

const valid = ({ from, to }: Run, pegs: number): boolean => from >= 0 && to < pegs && from <= to

/** Let a row turn on another peg; the row after it starts where the yarn then is. */
export function turnElsewhere(turn: Turning, row: number, turnPeg: number): Fix[] {
  const label = `Turn on peg ${turnPeg + 1}`
  const alone = (pattern: Sheet): Sheet => {
    const run = runThat(turn, turnPeg)
    return valid(run, pattern.loom.pegs) ? setRun(pattern, row, run) : pattern
  }
  const withNext = (pattern: Sheet): Sheet => {
    const turned = alone(pattern)
    const next = chartOn(turned).rows[row + 1]?.run
    if (turned === pattern || !next) return pattern
    const forward = turn.heading === 'forward'
    const first = forward ? turnPeg - 1 : turnPeg + 1
    const run = forward ? { from: next.from, to: first } : { from: first, to: next.to }
    return valid(run, pattern.loom.pegs) ? setRun(turned, row + 1, run) : pattern
  }
  return [fix(label, alone), fix(`${label}, and begin the next row beside it`, withNext)]
}

export const waysNamed: Readonly<Record<Heading, string>> = { forward: 'higher', back: 'lower' }

/** Work a row from the yarn on, the way the row before leads: to where it ended, else to the edge. */
export const goOn =
  (row: number, gap: number, leads: Heading) =>
  (pattern: Sheet): Sheet => {
    const last = pattern.loom.pegs - 1
    const old = chartOn(pattern).rows[row]?.run
    const run =
      leads === 'forward'
        ? { from: gap, to: old && old.to >= gap ? old.to : last }
        : { from: old && old.from < gap ? old.from : 0, to: gap - 1 }
    if (run.from > run.to || run.to > last) return pattern
    return setHeading(setRun(pattern, row, run), row, null)
  }
