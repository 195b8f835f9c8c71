import type { Fix, Severity } from '../../checks/finding'
import { setWords } from '../../pattern/edits/words'
import type { Pattern, Run } from '../../pattern/pattern'
import { applyChanges, type Comparison, type Difference } from '../../words/compare/compare'
import { toldOf, type ToldDifference, type ToldRemark } from '../../words/compare/told/told'
import type { Reading, TextFix, TextRange } from '../../words/read/reading'
import { attempt } from './attempt'
import type { Rows } from '../../words/places'

/** What the reader or the comparison found in own words, as the bench shows it. */
export interface WordsFinding {
  /** Stable while the same thing is wrong with the same line: see words/compare/told/findingIds.ts. */
  readonly id: string
  readonly rule: string
  readonly severity: Severity
  /** Where it stands in the text; null: nowhere. */
  readonly range: TextRange | null
  /** Chart rows it is about; none: the whole chart. */
  readonly rows: readonly number[]
  /** Pegs in each of those rows; none: the whole row. */
  readonly places: readonly Run[]
  readonly message: string
  readonly advice: string
  /** Ordinary edits. Found when someone looks. */
  readonly fixes: readonly Fix[]
  /** Why it cannot be mended in the words and in the chart alike; null: it can, or is not asked. */
  readonly lacking: string | null
}

/** Changes of a text in rising order, as an edit of the pattern's own words. */
const editOf = (text: string, { changes }: TextFix): ((pattern: Pattern) => Pattern) => {
  const sorted = changes.toSorted((a, b) => a.range.from - b.range.from)
  return (pattern) => setWords(pattern, applyChanges(text, sorted))
}

/** What the chart waits for, where the words of a line do not fill their pegs. */
const whenFilled = (pegs: number): string =>
  `When your words fill all ${pegs} pegs, the chart can be changed to match.`

const ofRemark = (
  { text, settings }: Reading,
  rows: Rows,
  { remark, differences, id }: ToldRemark,
): WordsFinding => {
  const row = remark.row === null ? null : rows.chartRow(remark.row)
  const own = remark.fixes.map((fix) => ({ label: fix.label, edit: editOf(text, fix) }))
  const all = [row === null ? [] : row, ...differences.map((one) => one.rows)].flat()
  return {
    id,
    rule: remark.rule,
    severity: remark.severity,
    range: remark.range,
    rows: [...new Set(all)].sort((a, b) => a - b),
    places: remark.pegs && all.length < 2 ? [remark.pegs] : [],
    message: remark.message,
    advice: remark.advice,
    get fixes() {
      const mends = differences.flatMap((one) => fixesOf(text, one))
      const labels = mends.map(({ label }) => label)
      return [...own, ...mends.filter(({ label }, index) => labels.indexOf(label) === index)]
    },
    get lacking() {
      return differences.some(({ isRefused }) => isRefused) ? whenFilled(settings.pegs) : null
    },
  }
}

/** Each is tried out before it is offered: one that cannot even be tried is not. */
const fixesOf = (text: string, difference: Difference): Fix[] =>
  attempt([() => difference.fixes], () => []).result.map((fix) => ({
    label: fix.label,
    edit: 'edit' in fix ? fix.edit : editOf(text, fix),
  }))

const ofDifference = (
  { text }: Reading,
  { difference, places, id }: ToldDifference,
): WordsFinding => ({
  id,
  rule: difference.rule,
  severity: difference.severity,
  range: difference.range,
  rows: difference.rows,
  places,
  message: difference.message,
  advice: difference.advice,
  get fixes() {
    return fixesOf(text, difference)
  },
  get lacking() {
    return attempt([() => difference.lacking], () => null).result
  },
})

/** All that is found in the words, in the order of the text; what stands nowhere comes first. */
export function findingsOf(comparison: Comparison, rows: Rows): WordsFinding[] {
  const { reading } = comparison
  const { remarks, differences } = toldOf(comparison)
  return byPlaceInText([
    ...remarks.map((told) => ofRemark(reading, rows, told)),
    ...differences.map((told) => ofDifference(reading, told)),
  ])
}

/** In the order of the text; what stands nowhere comes first. */
export const byPlaceInText = (findings: readonly WordsFinding[]): WordsFinding[] =>
  findings.toSorted((a, b) => (a.range?.from ?? -1) - (b.range?.from ?? -1))

/** Does it stand at this place of the text, an end of it included? */
const touches = ({ range }: WordsFinding, { from, to }: TextRange): boolean =>
  range !== null && range.from <= to && range.to >= from

/** What stands at the caret; where nothing does, what stands on its line. */
export function findingsAt(
  findings: readonly WordsFinding[],
  text: string,
  caret: TextRange,
): WordsFinding[] {
  const here = findings.filter((finding) => touches(finding, caret))
  if (here.length > 0) return here
  const end = text.indexOf('\n', caret.to)
  const line = {
    from: text.lastIndexOf('\n', caret.from - 1) + 1,
    to: end < 0 ? text.length : end,
  }
  return findings.filter((finding) => touches(finding, line))
}

/**
 * The place of the next finding after the caret, or of the last one before it; round the ends. From
 * a caret that was not sent to a finding it goes to an error first, if there are any.
 */
export function nextPlace(
  findings: readonly WordsFinding[],
  caret: TextRange,
  step: 1 | -1,
): TextRange | null {
  const isAtOne = findings.some(({ range }) => range?.from === caret.from && range.to === caret.to)
  const errors = isAtOne ? [] : findings.filter(({ severity }) => severity === 'error')
  const errorRanges = errors.flatMap(({ range }) => range ?? [])
  const ranges = errorRanges.length > 0 ? errorRanges : findings.flatMap(({ range }) => range ?? [])
  const ordered = step === 1 ? ranges : ranges.toReversed()
  const beyond = ordered.find((range) =>
    step === 1
      ? range.from > caret.from || (range.from === caret.from && range.to > caret.to)
      : range.from < caret.from || (range.from === caret.from && range.to < caret.to),
  )
  return beyond ?? ordered[0] ?? null
}

/** Where findings are marked on the charts. */
export const marksOf = (
  findings: readonly WordsFinding[],
): { row: number | null; pegs: Run | null; severity: Severity }[] =>
  findings.flatMap(({ rows, places }) => {
    const pegs = places.length > 0 ? places : [null]
    return rows.flatMap((row) => pegs.map((run) => ({ row, pegs: run, severity: 'hint' as const })))
  })
