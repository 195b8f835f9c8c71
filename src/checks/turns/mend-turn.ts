import { setRun } from '../../pattern/edits/turning'
import type { Pattern, Run } from '../../pattern/pattern'
import type { Fix } from '../finding'
import { fix } from '../mending'
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
  const alone = (pattern: Pattern): Pattern => {
    const run = runThat(turn, turnPeg)
    return valid(run, pattern.loom.pegs) ? setRun(pattern, row, run) : pattern
  }
  const withNext = (pattern: Pattern): Pattern => {
    const turned = alone(pattern)
    const next = turned.chart.rows[row + 1]?.run
    if (turned === pattern || !next) return pattern
    const forward = turn.heading === 'forward'
    const first = forward ? turnPeg - 1 : turnPeg + 1
    const run = forward ? { from: next.from, to: first } : { from: first, to: next.to }
    return valid(run, pattern.loom.pegs) ? setRun(turned, row + 1, run) : pattern
  }
  return [fix(label, alone), fix(`${label}, and start the next row beside it`, withNext)]
}
