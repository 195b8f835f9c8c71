import { layOut } from '../layout'
import type { Pattern, ShortRowWish } from '../pattern'
import { schedule } from '../schedule'
import { findChart } from '../charts'
import { isWhole, roundOf, type Round } from './round'

/** What the other pegs go on with beside a heel that is a chart of its own. */
export interface Before {
  readonly chart: string
  /** Its first two rounds, a cell for each peg. */
  readonly beside: NonNullable<ShortRowWish['beside']>
  /** All its rounds. */
  readonly all: readonly Round[]
}

/**
 * The texture before step `at`: the nearest chart worked before it that goes over all the pegs. It ends with its
 * last round, so its first ones come next. Null without one, or where something else is worked between.
 */
export function textureBefore(pattern: Pattern, at: number): Before | null {
  for (const step of pattern.steps.slice(0, at).toReversed()) {
    if (step.kind === 'note') continue
    const chart = step.kind === 'chart' ? findChart(pattern, step.chart)?.chart : undefined
    if (step.kind !== 'chart' || !chart) return null
    // Another heel lies between.
    if (!chart.rows.every(isWhole)) continue
    const layout = layOut(chart, pattern.loom.pegs)
    if (layout.over !== 0) return null
    const rows = schedule(chart).flatMap(({ row }) => chart.rows[row] ?? [])
    const [first, second = first] = rows.map(({ cells }) =>
      layout.columnOf.map((column) => cells[column] ?? null),
    )
    return first && second
      ? {
          chart: step.chart,
          beside: [first, second],
          all: rows.map((row) => roundOf(row, layout)),
        }
      : null
  }
  return null
}
