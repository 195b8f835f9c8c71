import type { Reading, Remark, TextRange } from '../../read/reading'
import type { Difference } from '../comparison'

/** What a name is made of. */
interface Named {
  readonly name: string
  /** Where it is said; null: nowhere. */
  readonly at: TextRange | null
}

/**
 * Names for what is found in own words, by which it can be set aside: first those of the remarks,
 * then those of the differences. They are made of the line itself and never of its place in the
 * text, so that the same thing wrong with the same line keeps its name whatever is written or
 * repaired elsewhere. Lines that read alike are told apart by the section, and then by their order.
 */
export function findingIds(
  reading: Reading,
  remarks: readonly Remark[],
  differences: readonly Difference[],
): string[] {
  const all = [
    ...remarks.map((remark) => ofRemark(reading, remark)),
    ...differences.map((difference) => ofDifference(reading, difference)),
  ]
  const alike = countsOf(all.map(({ name }) => name))
  const ids = all.map(({ name, at }) => {
    const section = at && (alike.get(name) ?? 0) > 1 ? sectionOf(reading, at) : ''
    return section ? `${name}, ${section}` : name
  })
  const said = new Map<string, number>()
  return ids.map((id) => {
    const count = (said.get(id) ?? 0) + 1
    said.set(id, count)
    return count === 1 ? id : `${id}, ${count}`
  })
}

function countsOf(names: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
  return counts
}

const named = (parts: readonly string[]): string => ['words', ...parts.filter(Boolean)].join(', ')

const ofRemark = (reading: Reading, { rule, range }: Remark): Named => ({
  name: named([rule, lineOf(reading, range), saidAt(reading, range)]),
  at: range,
})

function ofDifference(reading: Reading, { rule, rows, read, range, places }: Difference): Named {
  const row = read === null ? undefined : reading.rows[read]
  if (!row) {
    const numbers = short(rows.map((index) => index + 1).join(' '))
    return { name: named([rule, numbers && `chart rows ${numbers}`]), at: null }
  }
  const pegs = places.map(({ from, to }) => `${from + 1}-${to + 1}`).join(' ')
  const isCalled = row.saidAt.from !== row.range.from
  return {
    name: named([
      rule,
      lineOf(reading, row.saidAt),
      isCalled && range ? saidAt(reading, range) : '',
      pegs && short(`pegs ${pegs}`),
    ]),
    at: row.saidAt,
  }
}

const sectionOf = ({ sections }: Reading, { from }: TextRange): string =>
  sections.findLast(({ range }) => range.from <= from)?.title ?? ''

/** The line that a range begins in. */
function lineOf({ text }: Reading, { from }: TextRange): string {
  const end = text.indexOf('\n', from)
  return quoted(text.slice(text.lastIndexOf('\n', from - 1) + 1, end < 0 ? text.length : end))
}

const saidAt = ({ text }: Reading, { from, to }: TextRange): string => quoted(text.slice(from, to))

const quoted = (text: string): string => {
  const words = text.replaceAll(/\s+/g, ' ').trim()
  return words && `"${short(words)}"`
}

/** Names stand in the file: of long lines they hold the beginning and a check number. */
const longest = 60

function short(text: string): string {
  if (text.length <= longest) return text
  let sum = 0x811c9dc5
  for (let at = 0; at < text.length; at++)
    sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193) >>> 0
  return `${text.slice(0, longest - 12)}… ${sum.toString(36)}`
}
