import type { LoomState } from '../../loom/state'
import type { Run } from '../pattern'
import { edgePegs, type StepWork } from '../workPiece'

/** Some pegs bound off and cast on again later, as for a thumb. Steps and pegs are 0-based. */
export interface Opening {
  readonly pegs: Run
  /** The bind-off at its lower side. */
  readonly from: number
  /** The cast-on at its upper side. */
  readonly to: number
}

const holdsLoop = ({ stacks }: LoomState, peg: number): boolean => (stacks[peg]?.length ?? 0) > 0

/** The pegs of a cast-on or bind-off beside which other loops stay on the loom; else null. */
export function partOf({ step, before, after }: StepWork): Run | null {
  if (step.kind !== 'cast on' && step.kind !== 'bind off') return null
  if (step.pegs === null) return null
  const run = edgePegs(step, before)
  const { stacks } = step.kind === 'cast on' ? before : after
  const isBeside = (peg: number): boolean => peg < run.from || peg > run.to
  return stacks.some((stack, peg) => isBeside(peg) && stack.length > 0) ? run : null
}

/** The openings of a piece, in the order they are bound off. */
export function openingsOf(steps: readonly StepWork[]): readonly Opening[] {
  return steps.flatMap((work, from): Opening[] => {
    const pegs = work.step.kind === 'bind off' ? partOf(work) : null
    if (!pegs) return []
    const to = steps.findIndex((later, at) => {
      const run = at > from && later.step.kind === 'cast on' ? partOf(later) : null
      return run !== null && run.from <= pegs.to && run.to >= pegs.from
    })
    const upper = steps[to] && partOf(steps[to])
    if (!upper) return []
    const shared = { from: Math.max(pegs.from, upper.from), to: Math.min(pegs.to, upper.to) }
    return [{ pegs: shared, from, to }]
  })
}

/** Does a loop wait on a peg in work that this row leaves out, and is not bound off for an opening before the next row? */
export function leavesWaiting(steps: readonly StepWork[], index: number, row: number): boolean {
  const work = steps[index]
  const run = work?.rows?.rows[row]
  if (!work || !run) return false
  if (run.row.from <= work.pegs.from && run.row.to >= work.pegs.to) return false
  const next: Run[] = []
  if (row === (work.rows?.rows.length ?? 0) - 1)
    for (const later of steps.slice(index + 1)) {
      if (later.rows) break
      const part = later.step.kind === 'bind off' ? partOf(later) : null
      if (part) next.push(part)
    }
  for (let peg = work.pegs.from; peg <= work.pegs.to; peg++) {
    if (peg >= run.row.from && peg <= run.row.to) continue
    if (holdsLoop(run.before, peg) && !next.some(({ from, to }) => peg >= from && peg <= to))
      return true
  }
  return false
}
