import type { Remark } from '../reading'
import * as say from '../remarks/rows'
import type { Miscount } from './remarker'
import type { ReadRow } from '../reading'

/**
 * Rows that miscount by just the loops that one row before them made or took away: one remark at
 * that row, for all of them. A single row that does not come out keeps its own remark.
 */
export function foldMiscounts(
  remarks: readonly Remark[],
  miscounts: readonly Miscount[],
  rows: readonly ReadRow[],
  names: readonly string[],
): readonly Remark[] {
  if (miscounts.length < 2) return remarks
  const groups = new Map<number, Miscount[]>()
  let cause: number | null = null
  let seen = 0
  for (const miscount of miscounts) {
    for (; seen < miscount.row; seen++) if (changes(rows[seen])) cause = seen
    if (cause === null || !comesFrom(miscount, rows[cause])) continue
    const group = groups.get(cause)
    if (group) group.push(miscount)
    else groups.set(cause, [miscount])
  }
  const instead = new Map<Remark, Remark | null>()
  for (const [at, group] of groups) {
    const [first, ...others] = group
    const row = rows[at]
    if (!first || !row || others.length === 0) continue
    const { saidAt, label, before, after } = row
    const name = names[at] ?? label
    instead.set(first.remark, {
      ...say.causeOfMiscounts(name, before, after, first.remark.message, others.length, saidAt),
      row: at,
      pegs: null,
    })
    for (const { remark } of others) instead.set(remark, null)
  }
  if (instead.size === 0) return remarks
  return remarks
    .map((remark) => (instead.has(remark) ? (instead.get(remark) ?? null) : remark))
    .filter((remark) => remark !== null)
}

/** A row that itself comes out, and leaves another number of loops. */
const changes = (row: ReadRow | undefined): boolean =>
  row !== undefined && row.before !== row.after && row.takes > 0

/** Would the row come out if the one before it had left the loops as they were? */
function comesFrom({ trouble, takes }: Miscount, cause: ReadRow | undefined): boolean {
  if (!cause) return false
  const change = cause.after - cause.before
  if (trouble.kind === 'repeat') return (trouble.over - change) % trouble.block === 0
  return trouble.kind !== 'join' && trouble.loops - takes === change
}
