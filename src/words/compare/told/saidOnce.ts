import type { Reading, Remark } from '../../read/reading'
import type { Run } from '../../../pattern/pattern'
import type { Comparison, Difference } from '../comparison'

/**
 * One remark for each line that says it: rows that share their line, or are called for again by a
 * reference or a repeat, have what is wrong from the line that they come from.
 */
export function saidOnce({ rows, remarks }: Reading): Remark[] {
  const said = new Set<string>()
  return remarks.filter(({ rule, row, range }) => {
    const read = row === null ? undefined : rows[row]
    if (!read) return true
    const line = `${rule} from ${read.range.from}`
    const place = `${rule} at ${range.from}-${range.to}`
    const again = read.time > 0 || read.saidAt.from !== read.range.from
    if (said.has(place) || (again && said.has(line))) return false
    said.add(line).add(place)
    return true
  })
}

/** The same beside a comparison, which says itself that words and chart have other pegs. */
const saidBeside = ({ reading, differences }: Comparison): Remark[] =>
  differences.some(({ rule }) => rule === 'pegs-differ')
    ? saidOnce(reading).filter(({ rule }) => rule !== 'stated-pegs')
    : saidOnce(reading)

/** A remark, with the differences that say the same of its line. */
export interface Joined {
  readonly remark: Remark
  readonly differences: readonly Difference[]
}

/**
 * What is found in words and against the chart, each thing once: a line whose stitches do not add
 * up differs from the chart for that reason, and rows that the words leave out are told by the
 * comparison, not by the gap in the numbers or the line that repeats them as well.
 */
export function joined(comparison: Comparison): {
  readonly remarks: readonly Joined[]
  /** Those that are told by themselves. */
  readonly differences: readonly Difference[]
} {
  const { reading, differences } = comparison
  const missing = numbersMissing(comparison)
  const isMissing = ({ from, to }: Run): boolean =>
    missing.filter((number) => from <= number && number <= to).length === to - from + 1
  const told = saidBeside(comparison).filter(({ lacks = [] }) => !lacks.some(isMissing))
  const lineOf = (row: number | null): number =>
    row === null ? NaN : (reading.rows[row]?.range.from ?? NaN)
  const taken = new Set<Difference>()
  const remarks = told.map((remark) => {
    const line = remark.rule === 'row-count' ? lineOf(remark.row) : NaN
    const same = differences.filter(
      (one) => one.rule === 'words-differ' && lineOf(one.read) === line && !taken.has(one),
    )
    for (const one of same) taken.add(one)
    return { remark, differences: same }
  })
  return { remarks, differences: differences.filter((one) => !taken.has(one)) }
}

/** Numbers that the chart has for the rows that the words leave out, each once. */
function numbersMissing({ differences, work }: Comparison): number[] {
  const rows = new Set(
    differences.flatMap((one) => (one.rule === 'row-missing-in-words' ? one.rows : [])),
  )
  return work.passes.filter(({ row }) => rows.has(row)).map(({ number }) => number)
}
