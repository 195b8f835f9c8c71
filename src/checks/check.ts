import { workPattern, type Work } from '../pattern/work'
import { nowhere, type Finding, type Repairs } from '../pattern/finding'
import { gather, learn, type Known, type RuleAt } from './gather'
import { byPlace, type Report } from './report'
import type { Noted } from './rule'
import { settingOf } from './setting'
import { allOf, repairsThatWork } from './vet'
import { onChart } from '../pattern/charts'
import { rowNamed } from './wording'

export type { Report } from './report'

/**
 * Hold a worked pattern against every rule that is not switched off. With the report of an earlier
 * version only the rows that changed are asked about; the result is the same.
 */
export function checkPattern(work: Work, previous?: Report): Report {
  const known = learn(work, settingOf(work.pattern), previous?.known)
  const all = findAll(known)
  // Nothing found stays the same nothing, so that whatever shows it need not show it again.
  return sortOut(known, all.length === 0 ? none : all)
}

/** Work the pattern and check it, from nothing. */
export const checkAfresh = (pattern: Work['pattern']): Report => checkPattern(workPattern(pattern))

const none: Finding[] = []

function findAll(known: Known): Finding[] {
  const { work, setting } = known
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
  return gather(known).map((at) => findingOf(known, at, nameOf(at.row)))
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
  const { pegs } = noted
  const place = { ...nowhere, rows: row === null ? [] : [row], pegs: pegs ? [pegs] : [] }
  const said = { row, name, id: idOf(at), message: noted.say(name), place }
  lastSaid.set(noted, said)
  return said
}

function findingOf(known: Known, at: RuleAt, name: string): Finding {
  const { rule, noted } = at
  const { id, message, place } = say(at, name)
  const repairs = repairsOf(known, at)
  return {
    id,
    rule: rule.id,
    severity: rule.severity,
    place,
    message,
    advice: noted.advice,
    repairs,
    get fixes() {
      return allOf(repairs)
    },
  }
}

function repairsOf(known: Known, { rule, row, noted }: RuleAt): Repairs {
  const { work } = known
  const broken = (now: Work) =>
    gather(learn(now, settingOf(now.pattern), known)).map((at) => ({ rule: at.rule.id }))
  return repairsThatWork(
    onChart(work.pattern, work.name),
    rule.id,
    () => noted.mend?.(row ?? 0) ?? [],
    () => broken(work),
    (sheet) => broken(workPattern(sheet, work)),
  )
}

function sortOut(known: Known, all: Finding[]): Report {
  if (all.length > 1) all.sort(byPlace)
  const { aside } = known.work
  if (aside.length === 0) return { findings: all, aside: none, known }
  const set = new Set(aside)
  return {
    findings: all.filter(({ id }) => !set.has(id)),
    aside: all.filter(({ id }) => set.has(id)),
    known,
  }
}
