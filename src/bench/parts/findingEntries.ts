import { severities, type Finding, type Severity } from '../../checks/finding'
import type { Bench } from '../state/bench.svelte'
import { rowName } from '../state/row-name'
import type { WordsFinding } from '../words/findings'

/** Something found in the chart or in the words, as the list of findings shows it. */
export interface Entry {
  readonly id: string
  readonly severity: Severity
  readonly where: string
  readonly message: string
  readonly advice: string
  /** The check that found it, which can be switched off; null: it was found in the words. */
  readonly check: string | null
  readonly goTo: () => void
  /** Labels of its repairs, found when someone looks. */
  readonly fixes: readonly { readonly label: string; readonly mend: () => void }[]
}

function entryOfWords(bench: Bench, finding: WordsFinding): Entry {
  const { id, severity, message, advice, rows, places, range } = finding
  const goTo = () => {
    const [row] = rows
    if (row !== undefined) bench.goTo({ row, peg: places[0]?.from ?? bench.spot.peg })
    if (range) bench.wording.showAt(range)
  }
  return {
    id,
    severity,
    where: whereInWords(bench, finding),
    message,
    advice,
    check: null,
    goTo,
    get fixes() {
      return finding.fixes.map(({ label }) => ({
        label,
        mend: () => {
          goTo()
          bench.wording.mend(finding, label)
          bench.say(`Done: ${label}.`)
        },
      }))
    },
  }
}

function whereInWords(bench: Bench, { rows }: WordsFinding): string {
  const [first] = rows
  const last = rows.at(-1)
  if (first === undefined || last === undefined) return 'Words'
  const name = `Words, ${rowName(bench.work, first).toLowerCase()}`
  return first === last ? name : `${name} and others`
}

function entryOfChart(bench: Bench, finding: Finding): Entry {
  const { id, severity, message, advice, rule, place } = finding
  const goTo = () => bench.goTo({ row: place.row ?? bench.spot.row, peg: place.pegs?.from ?? 0 })
  return {
    id,
    severity,
    where: whereInChart(bench, finding),
    message,
    advice,
    check: rule,
    goTo,
    get fixes() {
      return finding.fixes.map(({ label, edit }) => ({
        label,
        mend: () => {
          goTo()
          bench.apply(label, edit)
          bench.say(`Done: ${label}.`)
        },
      }))
    },
  }
}

function whereInChart(bench: Bench, { place }: Finding): string {
  const row = place.row === null ? 'Whole chart' : rowName(bench.work, place.row)
  if (!place.pegs) return row
  const { from, to } = place.pegs
  return `${row}, ${from === to ? `peg ${from + 1}` : `pegs ${from + 1}–${to + 1}`}`
}

/** All that is found: the worst first, of the words before of the chart, then in order of place. */
export const entriesOf = (bench: Bench): Entry[] => {
  const ofWords = bench.wording.findings
  const { findings } = bench.report
  return severities.flatMap((severity) => [
    ...ofWords.filter((one) => one.severity === severity).map((one) => entryOfWords(bench, one)),
    ...findings.filter((one) => one.severity === severity).map((one) => entryOfChart(bench, one)),
  ])
}

/** Those that are set aside. */
export const entriesAside = (bench: Bench): Entry[] => [
  ...bench.wording.aside.map((one) => entryOfWords(bench, one)),
  ...bench.report.aside.map((one) => entryOfChart(bench, one)),
]
