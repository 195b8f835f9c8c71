import { layOut } from '../layout'
import type { Pattern } from '../pattern'
import { schedule } from '../schedule'
import { findChart } from '../charts'
import { isWhole, roundOf, type Round } from './round'

/** What the other pegs go on with beside a heel that is a chart of its own. */
export interface Before {
  readonly chart: string
  /** Its first two rounds. */
  readonly rounds: readonly [Round, Round]
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
    const all = schedule(chart).flatMap(({ row }) => {
      const one = chart.rows[row]
      return one ? [roundOf(one, layout)] : []
    })
    const [first, second = first] = all
    return first && second ? { chart: step.chart, rounds: [first, second], all } : null
  }
  return null
}
