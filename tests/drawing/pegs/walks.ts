import type { Moment } from '../../../src/loom/walk'
import { firstMoment, momentsFrom, walkRow } from '../../../src/loom/walk'
import { bindOffPegs, castOnPegs } from '../../../src/loom/edges'
import type { BindOff, CastOn } from '../../../src/loom/move'
import { emptyLoom } from '../../../src/loom/state'
import type { Pattern } from '../../../src/pattern/pattern'
import { habitsOf } from '../../../src/pattern/habits'
import { workPattern } from '../../../src/pattern/work'

/** Every row of a pattern, move by move. */
export const walksOf = (pattern: Pattern): readonly (readonly Moment[])[] =>
  workPattern(pattern).run.rows.map((row) => walkRow(row, habitsOf(pattern)))

/** The last row of a pattern, move by move. */
export const lastWalk = (pattern: Pattern): readonly Moment[] => walksOf(pattern).at(-1) ?? []

export function bindOffWalk(pattern: Pattern, how: BindOff): readonly Moment[] {
  const { end } = workPattern(pattern).run
  const { moments, record } = momentsFrom(firstMoment(end))
  bindOffPegs(end, habitsOf(pattern), how, 0, pattern.loom.pegs - 1, null, (move, loom) =>
    record(move, loom),
  )
  return moments
}

export function castOnWalk(pattern: Pattern, how: CastOn): readonly Moment[] {
  const empty = emptyLoom(pattern.loom.pegs)
  const { moments, record } = momentsFrom(firstMoment(empty))
  castOnPegs(empty, habitsOf(pattern), how, 0, pattern.loom.pegs - 1, (move, loom) =>
    record(move, loom),
  )
  return moments
}
