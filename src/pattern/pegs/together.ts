import { memo } from '../memo'
import type { Run } from '../pattern'
import type { PieceWork, StepWork } from '../workPiece'
import { partOf } from './openings'

/** Rows that are parts of one round. */
export interface Together {
  /** For each step, how many of its rows are part of a round that they make together with others. */
  readonly parts: readonly number[]
  /** For each step, how many of these are not the first part of their round, and add no height. */
  readonly later: readonly number[]
  /** Rows of the piece, where the parts of one round count once. */
  readonly rows: number
}

/** Some pegs worked in the direction of the loom by a row or an edge of a step. */
interface Part extends Run {
  readonly step: number
  readonly isRow: boolean
  readonly isForward: boolean
}

/**
 * Parts of the pegs that are worked one after the other, by rows and by edges, and that lead together
 * once round a ring, are one round: the pegs up to a thumb, its bind-off, and the pegs after it.
 */
export const together = memo((work: PieceWork): Together => {
  const { loom } = work.pattern
  const parts = work.steps.map(() => 0)
  const later = work.steps.map(() => 0)
  let { rows } = work
  let round: Part[] = []
  for (const part of loom.shape === 'ring' ? work.steps.flatMap(partsOf) : []) {
    const next = (round.at(-1)?.to ?? -1) + 1
    if (!part.isForward || part.from !== next) round = []
    if (!part.isForward || (part.from !== next && part.from !== 0)) continue
    round.push(part)
    if (part.to < loom.pegs - 1) continue
    const made = round.filter(({ isRow }) => isRow)
    if (round.length > 1 && made.length > 0) {
      for (const { step } of made) parts[step] = (parts[step] ?? 0) + 1
      for (const { step } of made.slice(1)) later[step] = (later[step] ?? 0) + 1
      rows -= made.length - 1
    }
    round = []
  }
  return { parts, later, rows }
})

function partsOf(work: StepWork, step: number): Part[] {
  const run = work.edge && partOf(work)
  if (run) return [{ ...run, step, isRow: false, isForward: work.edge.way.pegs[0] === run.from }]
  const last = work.before.stacks.length - 1
  if (work.edge) return [{ from: 0, to: last, step, isRow: false, isForward: false }]
  return (work.rows?.rows ?? []).map(({ row, heading }) => ({
    from: row.from,
    to: row.isPart ? row.to : Math.max(row.to, work.pegs.to),
    step,
    isRow: true,
    isForward: heading === 'forward',
  }))
}
