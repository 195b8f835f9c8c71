import type { Work } from '../pattern/work'
import { digestOf } from './digest'
import type { ChartView, Noted, RowDigest, Rule } from './rule'
import { rowRules, rules } from './rules'
import type { Setting } from './setting'

/** Something a rule noticed, at its row (0-based; null: the whole chart). */
export interface RuleAt {
  readonly rule: Rule
  readonly row: number | null
  readonly noted: Noted
}

/** Ask every rule that is not switched off. Rows that did not change answer from memory. */
export function gather(work: Work, setting: Setting): RuleAt[] {
  const { pattern, layout, firstRuns } = work
  const { rows } = pattern.chart
  const off = new Set(pattern.checks.off)
  const list: RuleAt[] = []
  const digests: RowDigest[] = []
  for (let row = 0; row < rows.length; row++) {
    const run = firstRuns[row]
    const chartRow = rows[row]
    if (!run || !chartRow) continue
    const digest = digestOf(run, chartRow, layout, setting, rowRules)
    digests.push(digest)
    for (const { rule, noted } of digest.notes)
      if (!off.has(rule.id)) list.push({ rule, row, noted })
  }
  const view = { work, setting, digests, digestAt: passDigests(work, setting, digests) }
  for (const rule of rules)
    if (rule.scope === 'chart' && !off.has(rule.id)) addChartNotes(list, rule, view)
  return list
}

/** Two workings of the same rows say the same thing once. */
function addChartNotes(
  list: RuleAt[],
  rule: Extract<Rule, { scope: 'chart' }>,
  view: ChartView,
): void {
  const said = new Set<string>()
  for (const { row, noted } of rule.check(view)) {
    const place = `${row}/${noted.pegs?.from}/${noted.pegs?.to}`
    if (said.has(place)) continue
    said.add(place)
    list.push({ rule, row, noted })
  }
}

function passDigests(
  { pattern, passes, run, layout }: Work,
  setting: Setting,
  digests: readonly RowDigest[],
): (pass: number) => RowDigest | undefined {
  if (pattern.chart.bands.length === 0) return (pass) => digests[pass]
  return (index) => {
    const pass = passes[index]
    const worked = run.rows[index]
    const row = pass && pattern.chart.rows[pass.row]
    return row && worked && digestOf(worked, row, layout, setting, rowRules)
  }
}
