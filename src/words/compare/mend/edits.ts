import { chartOn } from '../../../pattern/charts'
import type { Heading } from '../../../loom/direction'
import type { RowEnd } from '../../../loom/row'
import { withRow } from '../../../pattern/edits/chart'
import { insertRows } from '../../../pattern/edits/rows'
import { setRun } from '../../../pattern/edits/turning'
import { layoutOf } from '../../../pattern/layout'
import { limits, type Cell, type Run, type Sheet } from '../../../pattern/pattern'
import type { ReadRow } from '../../read/reading'
import { onPegs, widthOf, type Item } from '../within/hunks'
import type { Path } from '../within/path'
import type { Differing } from '../within/row'
import { wholeOf } from '../../../stitches/stitch'

/** A stitch and its lowest peg. */
type OnPeg = Pick<Item, 'stitch' | 'peg'>

export type Put =
  | { readonly can: true; readonly pattern: Sheet }
  | { readonly can: false; readonly reason: 'copies' | 'pegs' }

/**
 * Put stitches on pegs of a row. With a repeat every copy must come out alike, since the chart
 * holds it once; pegs beyond the row's run hold nothing against it.
 */
export function putOnPegs(pattern: Sheet, index: number, items: readonly OnPeg[]): Put {
  const row = chartOn(pattern).rows[index]
  if (!row) return { can: false, reason: 'pegs' }
  const { columnOf } = layoutOf(pattern)
  const wanted = columnOf.map((column) => row.cells[column] ?? null)
  for (const { stitch, peg } of items)
    for (let offset = 0; offset < stitch.width; offset++) {
      if (wanted[peg + offset] === undefined) return { can: false, reason: 'pegs' }
      wanted[peg + offset] = offset === 0 ? wholeOf(stitch) : null
    }
  const cells = [...row.cells]
  const filled = new Map<number, Cell>()
  const { from, to } = row.run ?? { from: 0, to: columnOf.length - 1 }
  for (let peg = Math.max(0, from); peg <= to && peg < columnOf.length; peg++) {
    const column = columnOf[peg] as number
    const cell = wanted[peg] ?? null
    if (filled.has(column) && filled.get(column) !== cell) return { can: false, reason: 'copies' }
    filled.set(column, cell)
    cells[column] = cell
  }
  return { can: true, pattern: withRow(pattern, index, { cells }) }
}

/** The words' stitches at these places, on the pegs where the chart has its own. */
export function wordsOnPegs(places: readonly Differing[], heading: Heading): OnPeg[] | null {
  const fits = places.every(
    ({ words, chart, pegs }) => fills(words, pegs) && widthOf(words) === widthOf(chart),
  )
  return fits ? places.flatMap(({ words, pegs }) => onPegs(words, heading, pegs)) : null
}

const fills = (items: readonly Pick<Item, 'stitch'>[], { from, to }: Run): boolean =>
  widthOf(items) === to - from + 1

/** Give a chart row the words' stitches, pegs, way and end. */
export function putRow(
  pattern: Sheet,
  index: number,
  read: ReadRow,
  path: Path,
  heading: Heading | null,
): Put {
  if (!fills(read.stitches, path.run)) return { can: false, reason: 'pegs' }
  const turned = withRow(setRun(pattern, index, path.run), index, { heading, end: path.end })
  return putOnPegs(turned, index, onPegs(read.stitches, path.heading, path.run))
}

/** A row of the words that the chart does not have, and the way it is worked. */
export interface NewRow {
  readonly read: ReadRow
  readonly heading: Heading
}

/** Insert rows of the words before chart row `at`. */
export function insertRead(pattern: Sheet, at: number, rows: readonly NewRow[]): Put {
  if (chartOn(pattern).rows.length + rows.length > limits.rows.most)
    return { can: false, reason: 'pegs' }
  let result = insertRows(pattern, at, rows.length)
  for (const [offset, { read, heading }] of rows.entries()) {
    const run: Run = read.run ?? { from: 0, to: pattern.loom.pegs - 1 }
    const end: RowEnd = read.end
    const put = putRow(result, at + offset, read, { heading, run, end }, read.heading)
    if (!put.can) return put
    result = put.pattern
  }
  return { can: true, pattern: result }
}
