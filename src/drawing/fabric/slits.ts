import { emptyStack } from '../../loom/strand'
import { isCastAnew } from '../../loom/trace'
import type { RowRun } from '../../loom/work'
import type { Heights } from './heights'

/**
 * A slit: pegs bound off and cast on again with no row between. Its two edges are drawn a little way
 * from each other, and the rows next to them lie closer for it.
 */
export interface Slit {
  /** The first row over it. */
  readonly row: number
  /** Where the edges would meet, in rows. */
  readonly level: number
  /** How far each edge lies from there, in rows. */
  readonly below: number
  readonly above: number
  /** How many rows lie closer on each side. */
  readonly rowsBelow: number
  readonly rowsAbove: number
}

const widest = 1
const mostRows = 3

/** The slits on each peg, the lowest first; a peg without any has no entry. */
export function slitsOf(
  rows: readonly RowRun[],
  { reached, end }: Heights,
): ReadonlyMap<number, readonly Slit[]> {
  const slits = new Map<number, Slit[]>()
  rows.forEach(({ before }, row) => {
    const last = rows[row - 1]
    if (!last || last.after === before) return
    before.stacks.forEach((stack, peg) => {
      const was = last.after.stacks[peg] ?? emptyStack
      if (was.length === 0 || !isCastAnew(was, stack)) return
      const level = reached[row]?.[peg] ?? 0
      const rowsBelow = Math.min(mostRows, level)
      const rowsAbove = Math.min(mostRows, (end[peg] ?? 0) - level)
      const [below, above] = [Math.min(widest, rowsBelow / 2), Math.min(widest, rowsAbove / 2)]
      const slit = { row, level, below, above, rowsBelow, rowsAbove }
      slits.set(peg, [...(slits.get(peg) ?? []), slit])
    })
  })
  return slits
}

/** Where a height on a peg with slits is drawn, in rows; `row` is the first one that it belongs to. */
export function besideSlits(slits: readonly Slit[] | undefined, y: number, row: number): number {
  let drawn = y
  for (const { row: first, level, below, above, rowsBelow, rowsAbove } of slits ?? []) {
    const way = y - level
    if (row < first && -way < rowsBelow) drawn -= below * (1 + way / rowsBelow)
    if (row >= first && way < rowsAbove) drawn += above * (1 - way / rowsAbove)
  }
  return drawn
}
