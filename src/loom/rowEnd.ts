import { opposite, type Heading } from './direction'
import type { RowEnd } from './row'

/** Pegs `from`..`to`, both included, that a row covers, and how it ends. */
interface Ended {
  readonly from: number
  readonly to: number
  readonly end: RowEnd
}

interface Setting {
  readonly shape: 'ring' | 'bar'
  readonly pegs: number
}

/** The gap beside which the yarn must hang where a row begins. */
export const gapBefore = ({ from, to }: Omit<Ended, 'end'>, heading: Heading): number =>
  heading === 'forward' ? from : to + 1

/** The gap behind the last peg of a row. */
export const gapBehind = ({ from, to }: Omit<Ended, 'end'>, heading: Heading): number =>
  heading === 'forward' ? to + 1 : from

/** Peg 1 of a ring follows its last peg. */
export const pegInLoom = (peg: number, { shape, pegs }: Setting): number =>
  shape === 'ring' ? (peg + pegs) % pegs : peg

/**
 * The peg on which a turn lays its strand: a German turn on the last peg of its row, a wrap on the next
 * one, which may lie beyond the pegs. null: the row does not turn.
 */
export function turnPegOf({ from, to, end }: Ended, heading: Heading): number | null {
  if (end === 'on') return null
  const beyond = end === 'wrap' ? 1 : 0
  return heading === 'forward' ? to + beyond : from - beyond
}

/**
 * Where the yarn hangs after a row, and which way work goes on. A turn turns, and so does a bar at its
 * edges; on a ring the last gap is the first one again. `yarn`: the gap in which the last stitch leaves it.
 */
export function afterRow(
  row: Ended,
  heading: Heading,
  { shape, pegs }: Setting,
  yarn: number = gapBehind(row, heading),
): { readonly gap: number; readonly heading: Heading } {
  const forward = heading === 'forward'
  const last = forward ? row.to : row.from
  const back = opposite(heading)
  if (row.end === 'German turn') return { gap: forward ? last : last + 1, heading: back }
  if (row.end === 'wrap') return { gap: gapBehind(row, heading), heading: back }
  const turns = shape === 'bar' && last === (forward ? pegs - 1 : 0)
  return {
    gap: shape === 'ring' && yarn === pegs ? 0 : yarn,
    heading: turns ? back : heading,
  }
}
