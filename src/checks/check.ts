import { workPattern, type Work } from '../pattern/work'
import { digestOf } from './digest'
import type { Finding, Fix } from './finding'
import { byPlace, type Report } from './report'
import type { Noted, PlacedNote, RowDigest, Rule } from './rule'
import { rowRules, rules } from './rules'
import { settingOf, type Setting } from './setting'
import { thatWork } from './vet'
import { rowNamed } from './wording'

export { countBySeverity, type Report } from './report'

/**
 * Hold a worked pattern against every rule that is not switched off. What is known of rows that
 * did not change is kept with their runs. A piece that stays without findings keeps its report.
 */
export function checkPattern(work: Work, previous?: Report): Report {
  const report = sortOut(work, findAll(work))
  return previous && isClean(previous) && isClean(report) ? previous : report
}

const isClean = ({ findings, aside }: Report): boolean => findings.length + aside.length === 0

function findAll(work: Work): Finding[] {
  const { pattern, layout, firstRuns } = work
  const off = new Set(pattern.checks.off)
  const setting = settingOf(pattern)
  const { rows } = pattern.chart
  const findings: Finding[] = []
  const ids = new Set<string>()
  const name = (row: number | null): string => {
    const run = row === null ? undefined : firstRuns[row]
    return run ? rowNamed(run, setting, work.numbers[row ?? 0] ?? 0) : 'The chart'
  }
  const add = (rule: Rule, row: number | null, noted: Noted): void => {
    const finding = findingOf(work, rule, { row, noted }, name(row))
    if (ids.has(finding.id)) return
    ids.add(finding.id)
    findings.push(finding)
  }
  const digests: RowDigest[] = []
  for (let row = 0; row < rows.length; row++) {
    const run = firstRuns[row]
    const chartRow = rows[row]
    if (!run || !chartRow) continue
    const digest = digestOf(run, chartRow, layout, setting, rowRules)
    digests.push(digest)
    for (const { rule, noted } of digest.notes) if (!off.has(rule.id)) add(rule, row, noted)
  }
  const view = { work, setting, digests, digestAt: passDigests(work, setting, digests) }
  for (const rule of rules)
    if (rule.scope === 'chart' && !off.has(rule.id))
      for (const { row, noted } of rule.check(view)) add(rule, row, noted)
  return findings
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

/** The same rule at the same place is the same finding: rule, row, pegs, numbered from 1. */
const idOf = ({ id }: Rule, { row, noted: { pegs } }: PlacedNote): string =>
  [
    id,
    row === null ? 'chart' : `row ${row + 1}`,
    pegs ? `pegs ${pegs.from + 1}-${pegs.to + 1}` : 'all',
  ].join(', ')

function findingOf(work: Work, rule: Rule, note: PlacedNote, name: string): Finding {
  const { row, noted } = note
  const id = idOf(rule, note)
  let fixes: readonly Fix[] | undefined
  return {
    id,
    rule: rule.id,
    severity: rule.severity,
    place: { row, pegs: noted.pegs },
    message: noted.say(name),
    advice: noted.advice,
    /** Tried out only when someone looks: each one costs a run of the piece. */
    get fixes() {
      return (fixes ??= noted.mend
        ? thatWork(work, rule.id, noted.mend(row ?? 0), reportAgain)
        : [])
    },
  }
}

const reportAgain = (work: Work): readonly Finding[] => findAll(work)

function sortOut(work: Work, all: Finding[]): Report {
  all.sort(byPlace)
  const { aside } = work.pattern.checks
  if (aside.length === 0) return { findings: all, aside: [] }
  const set = new Set(aside)
  return {
    findings: all.filter(({ id }) => !set.has(id)),
    aside: all.filter(({ id }) => set.has(id)),
  }
}

/** Work the pattern and check it, from nothing. */
export const checkAfresh = (pattern: Work['pattern']): Report => checkPattern(workPattern(pattern))
