import type { Difference } from '../../words/compare/compare'
import type { Reading, Remark, TextRange } from '../../words/read/reading'

/**
 * Names for what is found in own words, by which it can be set aside. They are made of the line
 * itself and never of its number in the text, so that the same thing wrong with the same line
 * keeps its name whatever is written or repaired elsewhere.
 */
export class FindingIds {
  readonly #counts = new Map<string, number>()

  constructor(private readonly reading: Reading) {}

  ofRemark({ rule, range }: Remark): string {
    return this.#once([rule, this.#section(range), this.#line(range), this.#said(range)])
  }

  ofDifference({ rule, rows, read, range, places }: Difference): string {
    const row = read === null ? undefined : this.reading.rows[read]
    const pegs = places.map(({ from, to }) => `${from + 1}-${to + 1}`).join(' ')
    if (!row) {
      const numbers = short(rows.map((index) => index + 1).join(' '))
      return this.#once([rule, numbers && `chart rows ${numbers}`])
    }
    const source = range && row.saidAt.from !== row.range.from ? this.#said(range) : ''
    return this.#once([
      rule,
      this.#section(row.saidAt),
      this.#line(row.saidAt),
      source,
      pegs && short(`pegs ${pegs}`),
    ])
  }

  /** What two lines say alike is told apart by their order. */
  #once(parts: readonly string[]): string {
    const id = ['words', ...parts.filter(Boolean)].join(', ')
    const count = (this.#counts.get(id) ?? 0) + 1
    this.#counts.set(id, count)
    return count === 1 ? id : `${id}, ${count}`
  }

  #section({ from }: TextRange): string {
    return this.reading.sections.findLast(({ range }) => range.from <= from)?.title ?? ''
  }

  /** The line that a range begins in. */
  #line({ from }: TextRange): string {
    const { text } = this.reading
    const end = text.indexOf('\n', from)
    return quoted(text.slice(text.lastIndexOf('\n', from - 1) + 1, end < 0 ? text.length : end))
  }

  #said({ from, to }: TextRange): string {
    return from < to ? quoted(this.reading.text.slice(from, to)) : ''
  }
}

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
