import { castOn, type LoomState } from '../loom/state'
import { simulate, type Run } from '../loom/simulate'
import type { Habits, RowRun } from '../loom/work'
import { changeOf } from './changes'
import { layoutOf, type Layout } from './layout'
import type { Pattern, Row } from './pattern'
import { onPegs, type PatternRow } from './row'
import { rowNumbers, schedule, type Pass } from './schedule'

export type PatternRun = RowRun<PatternRow>

/** A pattern worked on its loom: the one run that all readings are taken from. */
export interface Work {
  readonly pattern: Pattern
  readonly layout: Layout
  /** One entry per working of a row; `run.rows` stands beside it, entry by entry. */
  readonly passes: readonly Pass[]
  readonly run: Run<PatternRow>
  /** First working of each chart row. */
  readonly firstRuns: readonly PatternRun[]
  /** Row numbers for people, one per chart row. */
  readonly numbers: readonly number[]
}

const habitsByKey = new Map<string, Habits>()
const starts = new Map<number, LoomState>()

/** The same object for the same habits. */
export function habitsOf({ loom, making }: Pattern): Habits {
  const { shape, direction } = loom
  const { knit, crossing, transfer } = making
  const key = [shape, direction, knit, crossing, transfer].join('/')
  let habits = habitsByKey.get(key)
  if (!habits) habitsByKey.set(key, (habits = { shape, direction, knit, crossing, transfer }))
  return habits
}

export function startOf(pegs: number): LoomState {
  let start = starts.get(pegs)
  if (!start) starts.set(pegs, (start = castOn(pegs)))
  return start
}

/** Rows on the pegs, one per pass; those of the work before are taken over. */
function lay(
  { chart }: Pattern,
  layout: Layout,
  passes: readonly Pass[],
  previous?: Work,
): readonly PatternRow[] {
  const { rows } = chart
  if (previous?.layout !== layout || previous.passes !== passes)
    return passes.map(({ row }) => onPegs(rows[row] as Row, layout))
  const were = previous.pattern.chart.rows
  const layOne = (index: number) => onPegs(rows[index] as Row, layout, were[index])
  const { from, to } = changeOf(rows, were)
  const laid = previous.run.given.slice()
  if (passes.length === rows.length) for (let row = from; row < to; row++) laid[row] = layOne(row)
  else
    passes.forEach(({ row }, pass) => {
      if (row >= from && row < to) laid[pass] = layOne(row)
    })
  return laid
}

/** Work the whole pattern; with the work of an earlier version, only what the edit touches. */
export function workPattern(pattern: Pattern, previous?: Work): Work {
  const layout = layoutOf(pattern)
  const passes = schedule(pattern.chart)
  const laid = lay(pattern, layout, passes, previous)
  const run = simulate(laid, startOf(pattern.loom.pegs), habitsOf(pattern), previous?.run)
  const firstRuns =
    pattern.chart.bands.length === 0
      ? run.rows
      : run.rows.filter((_, index) => passes[index]?.time === 0)
  return { pattern, layout, passes, run, firstRuns, numbers: rowNumbers(pattern.chart) }
}
