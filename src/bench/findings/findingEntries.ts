import { severities, type Finding, type Severity } from '../../checks/finding'
import { otherCharts } from '../../checks/piece/other-charts'
import { stepNamed, type PieceFinding } from '../../checks/piece/rule'
import { doneSaid } from '../../languages/english/done'
import { sayLost } from '../commands/lost'
import { chooseStep } from '../commands/piece'
import type { Bench } from '../state/bench.svelte'
import { rowName } from '../state/row-name'
import type { WordsFinding } from '../words/findings'
import { pegsNamed } from '../../languages/english/pegs'

/** Something found in the chart, in the words or in the whole piece, as the list of findings shows it. */
export interface Entry {
  readonly id: string
  readonly severity: Severity
  readonly where: string
  readonly message: string
  readonly advice: string
  /** The check that found it, which can be switched off; null: it was found in the words. */
  readonly check: string | null
  /** Can this one be set aside alone? */
  readonly alone: boolean
  readonly goTo: () => void
  /** Labels of its repairs, found when someone looks. */
  readonly fixes: readonly { readonly label: string; readonly mend: () => void }[]
  /** Why it is not mended the other way as well. */
  readonly lacking?: string | null
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
    alone: true,
    goTo,
    get fixes() {
      return finding.fixes.map(({ label }) => ({
        label,
        mend: () => {
          goTo()
          bench.wording.mend(finding, label)
          sayLost(bench, doneSaid(label))
        },
      }))
    },
    get lacking() {
      return finding.lacking
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
    alone: true,
    goTo,
    get fixes() {
      return finding.fixes.map(({ label, edit }) => ({
        label,
        mend: () => {
          goTo()
          if (bench.apply(label, edit)) sayLost(bench, doneSaid(label))
        },
      }))
    },
  }
}

function whereInChart(bench: Bench, { place }: Finding): string {
  const row = place.row === null ? 'Whole chart' : rowName(bench.work, place.row)
  if (!place.pegs) return row
  return `${row}, ${pegsNamed(place.pegs)}`
}

function entryOfPiece(bench: Bench, finding: PieceFinding): Entry {
  const { id, severity, message, advice, rule, step } = finding
  return {
    id: `${id}/${message}`,
    severity,
    where: step === null ? 'Whole piece' : stepNamed(bench.piece.work, step),
    message,
    advice,
    check: rule === otherCharts.id ? null : rule,
    alone: false,
    goTo: () => chooseStep(bench, step),
    get fixes() {
      return finding.fixes.map(({ label, edit }) => ({
        label,
        mend: () => {
          bench.piece.chosen = step
          if (bench.apply(label, edit)) bench.say(doneSaid(label))
        },
      }))
    },
  }
}

/**
 * All that is found: the worst first; of the piece before of the words and of the chart, but its
 * hints last; then in order of place.
 */
export const entriesOf = (bench: Bench): Entry[] => {
  const ofWords = bench.wording.findings
  const { findings } = bench.report
  const ofPiece = (hints: boolean) =>
    bench.piece.findings
      .filter((one) => (one.severity === 'hint') === hints)
      .map((one) => entryOfPiece(bench, one))
  const listed = severities.flatMap((severity) => [
    ...ofPiece(false).filter((one) => one.severity === severity),
    ...ofWords.filter((one) => one.severity === severity).map((one) => entryOfWords(bench, one)),
    ...findings.filter((one) => one.severity === severity).map((one) => entryOfChart(bench, one)),
  ])
  return [...listed, ...ofPiece(true)]
}

/** Those that are set aside. */
export const entriesAside = (bench: Bench): Entry[] => [
  ...bench.wording.aside.map((one) => entryOfWords(bench, one)),
  ...bench.report.aside.map((one) => entryOfChart(bench, one)),
]
