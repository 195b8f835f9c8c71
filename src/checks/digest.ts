import type { Row } from '../pattern/pattern'
import type { Layout } from '../pattern/layout'
import type { PatternRun } from '../pattern/work'
import { crossesIn } from './crosses/crossed'
import { passedEmpty } from '../pattern/pegs/passedEmpty'
import { lookOf } from './look'
import { nothing } from './nothing'
import type { RowDigest, RowRule, RuleNote } from './rule'
import type { Setting } from './setting'
import { turningOf } from './turns/turning'

const known = new WeakMap<PatternRun, RowDigest>()

/** Ask the row rules about a worked row, once for as long as it stays worked like that. */
export function digestOf(
  run: PatternRun,
  row: Row,
  layout: Layout,
  setting: Setting,
  rules: readonly RowRule[],
): RowDigest {
  const found = known.get(run)
  if (found?.setting === setting && found.layout === layout) return found
  const view = { run, row, layout, setting }
  let notes: RuleNote[] | undefined
  for (const rule of rules)
    for (const noted of rule.check(view)) (notes ??= []).push({ rule, noted })
  const digest: RowDigest = {
    run,
    layout,
    setting,
    notes: notes ?? nothing,
    look: lookOf(run.row),
    crosses: crossesIn(run),
    // On a loom that the chart does not fill, rows cannot meet; that is said once.
    turning: layout.over === 0 ? turningOf(run, setting) : null,
    passed: passedEmpty(run, setting),
  }
  known.set(run, digest)
  return digest
}
