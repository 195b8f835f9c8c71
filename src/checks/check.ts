import { workPattern, type Work } from '../pattern/work'
import type { Finding, Fix } from './finding'
import { gather, type RuleAt } from './gather'
import { byPlace, type Report } from './report'
import type { Noted, Rule } from './rule'
import { settingOf } from './setting'
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

/** Work the pattern and check it, from nothing. */
export const checkAfresh = (pattern: Work['pattern']): Report => checkPattern(workPattern(pattern))

const isClean = ({ findings, aside }: Report): boolean => findings.length + aside.length === 0

function findAll(work: Work): Finding[] {
  const setting = settingOf(work.pattern)
  const names = new Map<number | null, string>([[null, 'The chart']])
  const nameOf = (row: number | null): string => {
    let name = names.get(row)
    if (name === undefined) {
      const run = work.firstRuns[row ?? 0]
      name = run ? rowNamed(run, setting, work.numbers[row ?? 0] ?? 0) : ''
      names.set(row, name)
    }
    return name
  }
  return gather(work, setting).map((at) => findingOf(work, at, nameOf(at.row)))
}

/** The same rule at the same place is the same finding: rule, row, pegs, numbered from 1. */
const idOf = ({ rule, row, noted: { pegs } }: RuleAt): string =>
  `${rule.id}, ${row === null ? 'chart' : `row ${row + 1}`}, ${pegs ? `pegs ${pegs.from + 1}-${pegs.to + 1}` : 'all'}`

interface Said {
  readonly row: number | null
  readonly name: string
  readonly id: string
  readonly message: string
  readonly place: Finding['place']
}

const lastSaid = new WeakMap<Noted, Said>()

function say(at: RuleAt, name: string): Said {
  const { row, noted } = at
  const last = lastSaid.get(noted)
  if (last?.row === row && last.name === name) return last
  const place = { row, pegs: noted.pegs }
  const said = { row, name, id: idOf(at), message: noted.say(name), place }
  lastSaid.set(noted, said)
  return said
}

function findingOf(work: Work, at: RuleAt, name: string): Finding {
  const { rule, row, noted } = at
  const { id, message, place } = say(at, name)
  let fixes: readonly Fix[] | undefined
  return {
    id,
    rule: rule.id,
    severity: rule.severity,
    place,
    message,
    advice: noted.advice,
    /** Tried out only when someone looks: each one costs a run of the piece. */
    get fixes() {
      return (fixes ??= noted.mend ? thatWork(work, rule, noted.mend(row ?? 0), rulesBroken) : [])
    },
  }
}

const rulesBroken = (work: Work): readonly Rule[] =>
  gather(work, settingOf(work.pattern)).map(({ rule }) => rule)

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
