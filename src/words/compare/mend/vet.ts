import { namedOn, onChart } from '../../../pattern/charts'
import { isMended, perRule } from '../../../pattern/finding'
import type { Sheet } from '../../../pattern/pattern'
import { workPattern, type Work } from '../../../pattern/work'
import { read } from '../../read/read'
import type { Reading, TextFix } from '../../read/reading'
import type { Comparison, DifferenceFix } from '../comparison'
import type { Draft } from '../differences/draft'
import { applyChanges } from './rewrite'
import { saidOnce } from '../told/saidOnce'

type Compare = (reading: Reading, work: Work) => Comparison

/** What was there before, though the rows could not be read then, has not come by a repair. */
const sinceThen = ({ differences }: Comparison, { agreement }: Comparison) =>
  differences.filter(
    ({ rows }) => rows.length === 0 || rows.some((row) => agreement[row] !== 'unread'),
  )

/** Fewer differences, of that rule too, and none of a row that agreed: for the same chart rows. */
function isNearer(after: Comparison, before: Comparison, rule: string): boolean {
  const now = sinceThen(after, before)
  if (isMended(rule, before.differences, now)) return true
  const count = (list: Comparison['differences']) => perRule(list).get(rule) ?? 0
  return (
    now.length < before.differences.length &&
    count(now) < count(before.differences) &&
    now.every(
      ({ rows }) => rows.length > 0 && rows.every((row) => before.agreement[row] !== 'same'),
    )
  )
}

/** A line that others repeat has its errors once, however often it is repeated. */
const errorsIn = (reading: Reading): number =>
  saidOnce(reading).filter(({ severity }) => severity === 'error').length

/**
 * Of the repairs drafted, at most one of the words and one of the chart: the first after which
 * that difference is gone and no other has come. Each is tried out on a copy.
 */
export function fixesThatWork(
  comparison: Comparison,
  { rule, rewrites, edits }: Draft,
  compare: Compare,
): readonly DifferenceFix[] {
  const { reading, work } = comparison
  const fixes: DifferenceFix[] = []
  for (const one of rewrites()) {
    const changes = one.changes()
    if (!changes) continue
    const after = read(applyChanges(reading.text, changes), reading.settings, reading)
    if (errorsIn(after) > errorsIn(reading)) continue
    const now = compare(after, work)
    if (!isNearer(now, comparison, rule)) continue
    if (one.holds && !one.holds(comparison, now)) continue
    fixes.push({ label: one.label, changes } satisfies TextFix)
    break
  }
  const sheet = onChart(work.pattern, work.name)
  for (const { label, edit } of edits) {
    const pattern = edit(sheet)
    if (pattern === sheet) continue
    const now = readFor(pattern, reading, work.words)
    if (errorsIn(now) > errorsIn(reading)) continue
    const then = compare(now, workPattern(pattern, work))
    if (!isMended(rule, comparison.differences, then.differences)) continue
    fixes.push({ label, edit })
    break
  }
  return onlyLoses(rule, fixes) ? [] : fixes
}

/** Rows of the chart are not to go where the words cannot take them instead. */
const onlyLoses = (rule: string, fixes: readonly DifferenceFix[]): boolean =>
  rule === 'row-missing-in-words' && fixes.every((fix) => 'edit' in fix)

/** The words as they are read for another loom, or as the edit left them. */
function readFor(sheet: Sheet, reading: Reading, before: string | null): Reading {
  const { loom, making } = sheet
  const { words } = namedOn(sheet)
  const { settings } = reading
  const text = words !== null && words !== before ? words : reading.text
  const { shape, pegs, direction } = loom
  const now = { ...settings, shape, pegs, direction, knit: making.knit }
  const keys = ['shape', 'pegs', 'direction', 'knit'] as const
  const isSame = text === reading.text && keys.every((key) => now[key] === settings[key])
  return isSame ? reading : read(text, now, reading)
}
