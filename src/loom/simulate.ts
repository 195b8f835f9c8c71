import type { LoomRow } from './row'
import { sameState, type LoomState } from './state'
import { reworkRow } from './rework'
import { workRow, type Habits, type RowRun } from './work'

/** A list of rows, worked one after the other. */
export interface Run<R extends LoomRow = LoomRow> {
  readonly habits: Habits
  readonly start: LoomState
  readonly rows: readonly RowRun<R>[]
  readonly end: LoomState
  /** How many rows were really worked to get this run; the others were kept from the last one. */
  readonly worked: number
}

/**
 * Work `rows` from `start`. With the run of an earlier version, only from the first changed row
 * until the loom's state is the one it had before; all other rows keep their identity.
 */
export function simulate<R extends LoomRow>(
  rows: readonly R[],
  start: LoomState,
  habits: Habits,
  previous?: Run<R>,
): Run<R> {
  const old =
    previous && previous.habits === habits && sameState(previous.start, start) ? previous.rows : []
  let same = 0
  while (same < rows.length && same < old.length && rows[same] === old[same]?.row) same++
  let tail = 0
  const most = Math.min(rows.length, old.length) - same
  while (tail < most && rows[rows.length - 1 - tail] === old[old.length - 1 - tail]?.row) tail++

  const runs = old.slice(0, same)
  const shift = old.length - rows.length
  let state = runs.at(-1)?.after ?? old[0]?.before ?? start
  let worked = 0
  for (let i = same; i < rows.length; i++) {
    const inTail = i >= rows.length - tail
    const before = old[i + shift]
    if (inTail && before?.before === state) {
      for (let j = i + shift; j < old.length; j++) runs.push(old[j] as RowRun<R>)
      break
    }
    const row = rows[i] as R
    let run = (before && reworkRow(state, row, habits, before)) ?? workRow(state, row, habits)
    worked++
    const next = before?.after
    if (next && sameState(run.after, next)) run = { ...run, after: next }
    runs.push(run)
    state = run.after
  }
  return { habits, start, rows: runs, end: runs.at(-1)?.after ?? start, worked }
}
