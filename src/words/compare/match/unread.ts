import type { Run } from '../../../pattern/pattern'
import type { Pass } from '../../../pattern/schedule'
import { readHead } from '../../read/lines/heads'
import type { Reading, TextRange } from '../../read/reading'

/** What the words say that could not be read, and the reader has said so. */
export interface Unread {
  /** Rows of which nothing could be read: indexes into `Reading.rows`. */
  readonly rows: ReadonlySet<number>
  /** Numbers in the heads of lines that made no row. */
  readonly numbers: ReadonlySet<number>
  /** Repeats of rows that made none: where they stand. */
  readonly repeats: readonly TextRange[]
}

export function unreadOf(reading: Reading): Unread {
  const rows = new Set<number>()
  const numbers = new Set<number>()
  const repeats: TextRange[] = []
  for (const { row, severity, range } of reading.remarks) {
    if (severity !== 'error') continue
    if (row !== null) {
      if (reading.rows[row]?.stitches.length === 0) rows.add(row)
      continue
    }
    const head = headOf(reading, range)
    if (!head) repeats.push(range)
    const named = head === null ? null : readHead(head)
    for (const number of named?.numbers ?? []) numbers.add(number)
  }
  return { rows, numbers, repeats }
}

/** The head of the line that a range lies in. */
function headOf({ text, tokens }: Reading, range: TextRange): string | null {
  const line = text.lastIndexOf('\n', range.from - 1) + 1
  const head = tokens.findLast(
    (token) => token.kind === 'head' && token.range.from >= line && token.range.from <= range.from,
  )
  return head ? text.slice(head.range.from, head.range.to) : null
}

/**
 * Of a run of passes that the words leave out, the parts that are not there at all: what stands
 * there and could not be read has its remark already. `after`: the row of the words before them.
 */
export function reallyMissing(
  { rows, text }: Reading,
  { numbers, repeats }: Unread,
  run: Run,
  after: number | null,
  passes: readonly Pass[],
): Run[] {
  const from = after === null ? 0 : (rows[after]?.saidAt.to ?? 0)
  const to = rows[(after ?? -1) + 1]?.saidAt.from ?? text.length
  const repeated = repeats.some((range) => range.from >= from && range.to <= to)
  const parts: Run[] = []
  for (let pass = run.from; pass <= run.to; pass++) {
    const { number = 0, time = 0 } = passes[pass] ?? {}
    if (numbers.has(number) || (repeated && time > 0)) continue
    const last = parts.at(-1)
    if (last?.to === pass - 1) parts[parts.length - 1] = { from: last.from, to: pass }
    else parts.push({ from: pass, to: pass })
  }
  return parts
}
