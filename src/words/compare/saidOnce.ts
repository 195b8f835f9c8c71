import type { Reading, Remark } from '../read/reading'
import type { Comparison } from './comparison'

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
export const saidBeside = ({ reading, differences }: Comparison): Remark[] =>
  differences.some(({ rule }) => rule === 'pegs-differ')
    ? saidOnce(reading).filter(({ rule }) => rule !== 'stated-pegs')
    : saidOnce(reading)
