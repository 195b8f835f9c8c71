import type { ReadRow, Reading, TextFix, TextRange } from '../../read/reading'

export type Changes = TextFix['changes']

/** What is to become of the words. */
export interface Plan {
  /** New sentences of rows (index into `Reading.rows`), without label and count. */
  readonly sentences: ReadonlyMap<number, { readonly sentence: string; readonly count: string }>
  /** Rows to be taken out. */
  readonly gone: ReadonlySet<number>
  /** Lines to be put in after a row; -1: before the first. */
  readonly added: ReadonlyMap<number, readonly string[]>
  /** "Rnd 5:" for a row that gets a line of its own. */
  readonly head: (row: ReadRow, index: number) => string
  /** Further changes, beside those that the rows need; null: they cannot be made. */
  readonly also?: (changes: Changes) => Changes | null
}

/** At most so many rows get lines of their own in one repair. */
const mostLines = 200

/** Rows of one line, reference or repeat, in order. */
interface Statement {
  readonly range: TextRange
  readonly from: number
  /** Not included. */
  readonly to: number
}

const keyOf = ({ from, to }: TextRange): string => `${from}-${to}`

function statementsOf({ rows }: Reading): Statement[] {
  const statements: Statement[] = []
  for (let from = 0; from < rows.length;) {
    const range = (rows[from] as ReadRow).saidAt
    let to = from + 1
    while (to < rows.length && keyOf((rows[to] as ReadRow).saidAt) === keyOf(range)) to++
    statements.push({ range, from, to })
    from = to
  }
  return statements
}

/** The parts of a line: "Rnd 4: ", what is done, "(24 sts)". */
interface LineParts {
  readonly sentence: TextRange
  readonly counted: boolean
  /** After the sentence and the count. */
  readonly to: number
}

function partsOf({ text, tokens }: Reading, range: TextRange): LineParts {
  const said = text.slice(range.from, range.to).trimEnd()
  const to = range.from + said.length
  let from = range.from
  let end = to
  for (const { kind, range: token } of tokens) {
    if (token.from < range.from || token.to > to) continue
    if (kind === 'head' && /^[\s:.,&/-]*$/.test(text.slice(from, token.from))) from = token.to
    if (kind === 'count' && token.from < end) end = token.from
  }
  if (from > range.from) from += /^\s*[:.]?\s*/.exec(text.slice(from, to))?.[0].length ?? 0
  const counted = end < to
  const body = withoutEnd(text.slice(from, Math.max(from, end)), counted)
  return { sentence: { from, to: from + body.length }, counted, to }
}

/** Without blanks at its end, and without what stands before a count. */
function withoutEnd(text: string, counted: boolean): string {
  let end = text.length
  while (end > 0 && (counted ? /[\s([,]/ : /\s/).test(text.charAt(end - 1))) end--
  return text.slice(0, end)
}

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1
const lineEnd = (text: string, at: number): number => {
  const end = text.indexOf('\n', at)
  return end < 0 ? text.length : end
}

/**
 * The changes of the text that a plan needs: a line that says a row's stitches is rewritten where
 * all its rows are to say the same; otherwise the line, reference or repeat is written out row by
 * row, and those that stay keep their own words. null: it would take too many lines.
 */
export function rewrite(reading: Reading, plan: Plan): Changes | null {
  const { rows, text } = reading
  const statements = statementsOf(reading)
  const rewritten = new Map<string, string | null>()
  const changes: { range: TextRange; text: string }[] = []
  let lines = 0

  const addedInside = ({ from, to }: Statement): boolean => {
    for (let row = from; row < to - 1; row++) if (plan.added.has(row)) return true
    return false
  }
  const ownLine = ({ from, range }: Statement): boolean =>
    keyOf((rows[from] as ReadRow).range) === keyOf(range)
  const sentenceOf = (row: number): string => {
    const planned = plan.sentences.get(row)
    if (planned) return planned.sentence
    const { sentence } = partsOf(reading, (rows[row] as ReadRow).range)
    return text.slice(sentence.from, sentence.to)
  }
  const writeOut = ({ from, to, range }: Statement): void => {
    const list: string[] = []
    for (let row = from; row < to; row++) {
      if (!plan.gone.has(row))
        list.push(`${plan.head(rows[row] as ReadRow, row)} ${sentenceOf(row)}`)
      if (row < to - 1) list.push(...(plan.added.get(row) ?? []))
    }
    lines += list.length
    changes.push({ range: trimmed(text, range), text: list.join('\n') })
  }

  // Lines of their own first: references and repeats go by what becomes of them.
  for (const statement of statements.toSorted((a, b) => Number(ownLine(b)) - Number(ownLine(a)))) {
    const { from, to, range } = statement
    const indexes = Array.from({ length: to - from }, (_, n) => from + n)
    const kept = indexes.filter((row) => !plan.gone.has(row))
    const planned = indexes.map((row) => plan.sentences.get(row))
    const [first] = planned
    const isAlike = planned.every((one) => one?.sentence === first?.sentence)
    const isWhole = kept.length === indexes.length && !addedInside(statement)
    const isAsSaid = planned.every((one, n) => {
      const row = rows[indexes[n] ?? 0] as ReadRow
      return one?.sentence === (ownLine(statement) ? undefined : rewritten.get(keyOf(row.range)))
    })
    if (kept.length === 0) changes.push({ range: wholeLine(text, range), text: '' })
    else if (isWhole && isAsSaid) continue
    else if (isWhole && first && isAlike && ownLine(statement)) {
      const { sentence, counted, to: end } = partsOf(reading, range)
      const words = counted ? `${first.sentence} ${first.count}` : first.sentence
      changes.push({ range: { from: sentence.from, to: end }, text: words })
      rewritten.set(keyOf(range), first.sentence)
      continue
    } else writeOut(statement)
    rewritten.set(keyOf(range), null)
  }
  for (const [row, added] of plan.added) {
    const statement = statements.find(({ from, to }) => row >= from && row < to)
    if (statement && row < statement.to - 1) continue
    lines += added.length
    changes.push(insertion(reading, statement, statements[0], added))
  }
  if (lines > mostLines) return null
  const sorted = changes.sort((a, b) => a.range.from - b.range.from || a.range.to - b.range.to)
  return plan.also ? plan.also(sorted) : sorted
}

const trimmed = (text: string, { from, to }: TextRange): TextRange => ({
  from,
  to: from + text.slice(from, to).trimEnd().length,
})

/** A line goes with its line break; what shares a line with others goes alone. */
function wholeLine(text: string, range: TextRange): TextRange {
  const { from, to } = trimmed(text, range)
  const start = lineStart(text, from)
  const end = lineEnd(text, to)
  const alone = text.slice(start, from).trim() === '' && text.slice(to, end).trim() === ''
  return alone ? { from: start, to: Math.min(text.length, end + 1) } : { from, to }
}

/** Where the first line about rows begins: a repeat of rows that are not there is one, too. */
function firstLine({ text, remarks }: Reading, first: Statement | undefined): number {
  const starts = remarks.flatMap(({ rule, range }) => (rule === 'no-row' ? [range.from] : []))
  const from = Math.min(first?.range.from ?? Infinity, ...starts)
  return from === Infinity ? text.length : lineStart(text, from)
}

function insertion(
  reading: Reading,
  after: Statement | undefined,
  first: Statement | undefined,
  lines: readonly string[],
): Changes[number] {
  const { text } = reading
  const said = lines.join('\n')
  if (after) {
    const { to } = trimmed(text, after.range)
    const end = lineEnd(text, to)
    const alone = text.slice(to, end).trim() === ''
    return alone
      ? { range: { from: end, to: end }, text: `\n${said}` }
      : { range: { from: to, to }, text: `\n${said}\n` }
  }
  const at = firstLine(reading, first)
  const apart = at > 0 && text[at - 1] !== '\n' ? '\n' : ''
  return { range: { from: at, to: at }, text: `${apart}${said}\n` }
}

/** The text after the changes; they must not overlap. */
export function applyChanges(text: string, changes: Changes): string {
  let result = ''
  let at = 0
  for (const change of changes) {
    result += text.slice(at, change.range.from) + change.text
    at = change.range.to
  }
  return result + text.slice(at)
}
