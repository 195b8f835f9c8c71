import { chartOn } from '../../pattern/charts'
import { landing, paint } from '../../pattern/edits/paint'
import { setRepeat } from '../../pattern/edits/columns'
import { rotateColumns } from '../../pattern/edits/turn-round'
import type { Sheet, Run, Chart } from '../../pattern/pattern'
import { placed, type Placed } from '../../pattern/row'
import { fix, type Fix } from '../../pattern/finding'
import { fitsOn } from './whole'
import { counted } from '../../languages/english/forms'

/** A stitch of several columns in a row, in columns of the round or repeat. */
interface Wide {
  readonly row: number
  readonly item: Placed
  /** Does the end of the round, or of the repeat, cut it? */
  readonly cut: boolean
}

/** No start is looked for further away, in pegs. */
const farthest = 24

/**
 * Start the round, or the repeat, at the nearest column before or after at which no stitch is cut, and make
 * whole all that were cut at its end. Not where a cross would take the place of another stitch than
 * the plain one that it left behind.
 */
export const startElsewhere = (what: 'the round' | 'the repeat'): Fix[] => {
  const ways = (sign: 1 | -1, word: string): Fix[] =>
    Array.from({ length: farthest }, (_, index) => {
      const pegs = index + 1
      return fix(
        `Start ${what} ${counted(pegs, 'peg')} ${word}, so that every cross is whole`,
        (pattern) =>
          nearestStart(pattern, sign) === pegs
            ? (startedAt(pattern, sign * pegs) ?? pattern)
            : pattern,
      )
    })
  return [...ways(-1, 'earlier'), ...ways(1, 'later')]
}

const roundOf = ({ repeat, columns }: Chart): Run => repeat ?? { from: 0, to: columns - 1 }

/** The stitches of several columns in what goes round; null where one lies over its edges. */
function wideIn(pattern: Sheet): readonly Wide[] | null {
  const { from, to } = roundOf(chartOn(pattern))
  const list: Wide[] = []
  for (const [row, there] of chartOn(pattern).rows.entries())
    for (const item of placed(there)) {
      const { column, columns, stitch } = item
      const last = column + columns - 1
      if (stitch.width === 1 || last < from || column > to) continue
      if (column < from || last > to) return null
      list.push({ row, item, cut: last === to && columns < stitch.width })
    }
  return list
}

let lastAsked: { readonly pattern: Sheet; readonly starts: readonly number[] } | null = null

/** Some columns do not go round: others of them may, as many as before, so that no stitch lies over an edge. */
const withOtherRepeat = (pattern: Sheet, by: number): Sheet => {
  const { from, to } = roundOf(chartOn(pattern))
  return setRepeat(pattern, { from: from + by, to: to + by })
}

/** By how many pegs the repeat can be moved over the chart; 0: nowhere near. */
function nearestRepeat(pattern: Sheet, sign: 1 | -1): number {
  const chart = chartOn(pattern)
  if (!chart.repeat) return 0
  const { from, to } = chart.repeat
  const isFree = (column: number): boolean =>
    chart.rows.every((row) =>
      placed(row).every(
        (item) => column <= item.column || column >= item.column + item.stitch.width,
      ),
    )
  for (let pegs = 1; pegs <= farthest; pegs++) {
    const [first, end] = [from + sign * pegs, to + sign * pegs + 1]
    if (first < 0 || end > chart.columns) return 0
    if (isFree(first) && isFree(end)) return pegs
  }
  return 0
}

/** By how many pegs the nearest such start lies before or after the present one; 0: there is none. */
function nearestStart(pattern: Sheet, sign: 1 | -1): number {
  if (wideIn(pattern) === null) return nearestRepeat(pattern, sign)
  if (lastAsked?.pattern !== pattern) lastAsked = { pattern, starts: freeStarts(pattern) }
  const { starts } = lastAsked
  const { from, to } = roundOf(chartOn(pattern))
  const width = to - from + 1
  for (let pegs = 1; pegs < Math.min(width, farthest + 1); pegs++)
    if (starts.includes((sign * pegs + width) % width)) return pegs
  return 0
}

/** Columns, from the present start on, at which the round can start and cut nothing. */
function freeStarts(pattern: Sheet): readonly number[] {
  const all = wideIn(pattern)
  if (!all?.some(({ cut }) => cut)) return []
  const { from, to } = roundOf(chartOn(pattern))
  const width = to - from + 1
  const taken = new Set<number>()
  for (const { item, cut } of all)
    for (let offset = 1; offset < (cut ? item.stitch.width : item.columns); offset++)
      taken.add((item.column - from + offset) % width)
  return Array.from({ length: width }, (_, start) => start).filter((start) => !taken.has(start))
}

function startedAt(pattern: Sheet, by: number): Sheet | null {
  if (wideIn(pattern) === null) return withOtherRepeat(pattern, by)
  const { from, to } = roundOf(chartOn(pattern))
  const width = to - from + 1
  const columnAfter = (column: number) => from + ((column - from - by + 2 * width) % width)
  let started = rotateColumns(pattern, by)
  for (const { row, item, cut } of wideIn(pattern) ?? []) {
    if (!cut) continue
    const column = columnAfter(item.column)
    const { background } = pattern.style
    const fits = fitsOn(started, item, row, column, column, (found) => found === background)
    if (!fits || !landing(started, item.stitch, row, column).can) return null
    started = paint(started, item.stitch, row, column)
  }
  return started
}
