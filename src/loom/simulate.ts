import type { LoomRow } from './row'
import { sameState, type LoomState } from './state'
import { reworkRow } from './rework'
import { workRow, type Habits, type RowRun } from './work'

/** A list of rows, worked one after the other. */
export interface Run<R extends LoomRow = LoomRow> {
  readonly habits: Habits
  readonly start: LoomState
  /** The rows as they were given. */
  readonly given: readonly R[]
  readonly rows: readonly RowRun<R>[]
  readonly end: LoomState
  /** How many rows were really worked to get this run; the others were kept from the last one. */
  readonly worked: number
}

/**
 * Work `rows` from `start`. With the run of an earlier version, only from the first changed row
 * until the loom's state is the one it had before; all other rows keep their identity. A row that is worked
 * again on a loom that is as it was the last time, as in plain rounds and bands, has one run for both.
 */
export function simulate<R extends LoomRow>(
  rows: readonly R[],
  start: LoomState,
  habits: Habits,
  previous?: Run<R>,
): Run<R> {
  const last =
    previous && previous.habits === habits && sameState(previous.start, start) ? previous : null
  const old = last?.rows ?? []
  const were = last?.given ?? []
  let same = 0
  while (same < rows.length && same < were.length && rows[same] === were[same]) same++
  let tail = 0
  const most = Math.min(rows.length, were.length) - same
  while (tail < most && rows[rows.length - 1 - tail] === were[were.length - 1 - tail]) tail++

  const shift = were.length - rows.length
  const anew: RowRun<R>[] = []
  /** The last working of each row: where the loom is as it was then, so is what comes of it. */
  const lately = new Map<R, RowRun<R>>()
  let state = old[same - 1]?.after ?? old[0]?.before ?? start
  let next = same
  let worked = 0
  for (; next < rows.length; next++) {
    const before = old[next + shift]
    if (next >= rows.length - tail && before?.before === state) break
    const row = rows[next] as R
    let run = lately.get(row)
    if (!run || !sameState(run.before, state)) {
      run = (before && reworkRow(state, row, habits, before)) ?? workRow(state, row, habits)
      worked++
    }
    const was = before?.after
    if (was && sameState(run.after, was)) run = { ...run, after: was }
    anew.push(run)
    lately.set(row, run)
    state = run.after
  }
  const end = next < rows.length ? next + shift : old.length
  const runs = old.toSpliced(same, end - same, ...anew)
  return { habits, start, given: rows, rows: runs, end: runs.at(-1)?.after ?? start, worked }
}
