import { memo } from '../../../pattern/memo'
import { setWords } from '../../../pattern/edits/words'
import { nowhere, type Finding, type Fix } from '../../../pattern/finding'
import type { Run } from '../../../pattern/pattern'
import { attempt } from '../../attempt'
import { Rows } from '../../places'
import type { Reading, TextFix } from '../../read/reading'
import type { Comparison, Difference } from '../comparison'
import { applyChanges } from '../mend/rewrite'
import { findingIds } from './findingIds'
import { joined, type Joined } from './saidOnce'

/** What is told of own words, each fault once, set aside or not. */
export interface Told {
  /** In the order of the text; what stands nowhere comes first. */
  readonly findings: readonly Finding[]
  /** In how many places words and chart differ. */
  readonly differences: number
}

/** What the reader and the comparison found. */
export const toldOf = memo((comparison: Comparison): Told => {
  const { reading, work, pairs } = comparison
  const { remarks, differences } = joined(comparison)
  const alone = withoutCascade(comparison, differences)
  const rows = new Rows(work, pairs)
  const ids = findingIds(
    reading,
    remarks.map(({ remark }) => remark),
    alone.map(({ difference }) => difference),
  )
  const findings = [
    ...remarks.map((one) => ofRemark(reading, rows, one)),
    ...alone.map((one) => ofDifference(reading, one)),
  ]
  return {
    findings: byPlaceInText(findings.map((find, index) => find(ids[index] ?? ''))),
    differences: remarks.filter((one) => one.differences.length > 0).length + alone.length,
  }
})

/** Errors in own words that are not set aside. */
export const openErrors = (comparison: Comparison, aside: readonly string[]): readonly Finding[] =>
  toldOf(comparison).findings.filter(
    ({ severity, id }) => severity === 'error' && !aside.includes(id),
  )

/** In the order of the text; what stands nowhere comes first. */
export const byPlaceInText = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => (a.place.text?.from ?? -1) - (b.place.text?.from ?? -1))

/** It has its name when all names are known. */
type Unnamed = (id: string) => Finding

const ofRemark =
  ({ text, settings }: Reading, rows: Rows, { remark, differences }: Joined): Unnamed =>
  (id) => {
    const { rule, severity, message, advice, range, row: read, pegs, fixes } = remark
    const row = read === null ? null : rows.chartRow(read)
    const all = [row === null ? [] : row, ...differences.map((one) => one.rows)].flat()
    const own = fixes.map((fix) => editOf(text, fix))
    return {
      id,
      rule,
      severity,
      message,
      advice,
      place: {
        ...nowhere,
        rows: [...new Set(all)].sort((a, b) => a - b),
        pegs: pegs && all.length < 2 ? [pegs] : [],
        text: range,
        read,
      },
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

const ofDifference =
  ({ text }: Reading, { difference, places }: Alone): Unnamed =>
  (id) => {
    const { rule, severity, range, rows, read, row } = difference
    return {
      id,
      rule,
      severity,
      // Found when it is looked at: for its advice the words are tried on the chart.
      get message() {
        return difference.message
      },
      get advice() {
        return difference.advice
      },
      place: { ...nowhere, rows, pegs: places, text: range, read: row === null ? read : null },
      get fixes() {
        return fixesOf(text, difference)
      },
      get lacking() {
        return attempt([() => difference.lacking], () => null).result
      },
    }
  }

/** What the chart waits for, where the words of a line do not fill their pegs. */
const whenFilled = (pegs: number): string =>
  `When your words fill all ${pegs} pegs, the chart can be changed to match.`

/** Changes of a text, in rising order, as an edit of the pattern's own words. */
function editOf(text: string, { label, changes }: TextFix): Fix {
  const sorted = changes.toSorted((a, b) => a.range.from - b.range.from)
  return { label, edit: (sheet) => setWords(sheet, applyChanges(text, sorted)) }
}

/** Each is tried out before it is offered: one that cannot even be tried is not. */
const fixesOf = (text: string, difference: Difference): Fix[] =>
  attempt([() => difference.fixes], () => []).result.map((fix) =>
    'edit' in fix ? fix : editOf(text, fix),
  )

/** A difference that is told by itself, with its pegs. */
interface Alone {
  readonly difference: Difference
  readonly places: readonly Run[]
}

/**
 * Where the stitches of a line do not add up, those after the mistake stand beside others than they
 * should: of these differences one is enough, for the whole row.
 */
function withoutCascade({ reading }: Comparison, differences: readonly Difference[]): Alone[] {
  const wrong = new Set<number>()
  for (const { row, severity } of reading.remarks) {
    const line = severity === 'error' && row !== null ? reading.rows[row] : undefined
    if (line) wrong.add(line.range.from)
  }
  const said = new Set<string>()
  return differences.flatMap((difference) => {
    const line = difference.read === null ? undefined : reading.rows[difference.read]
    if (difference.rule !== 'words-differ' || !line || !wrong.has(line.range.from))
      return [{ difference, places: difference.places }]
    const key = difference.rows.join(' ')
    if (said.has(key)) return []
    said.add(key)
    return [{ difference, places: [] }]
  })
}
