import type { Often, Said } from '../nodes'
import type { TextRange } from '../reading'

/** Rows that are repeated, and what stands around the repeat. */
export interface Repeat {
  /** Rows as the words count them, and real rows. */
  readonly lines: number
  readonly rows: number
  /** The number of the last row told, and that of the next one; null: no number follows. */
  readonly last: number
  readonly next: number | null
}

/**
 * How many times more rows are worked. "n times more" and "n times in all" are exact; a bare "n
 * times" is settled by a stated number of rows or by the number of the next row, and else is asked.
 * Rows "until n rnds are worked" are counted from the first that is repeated.
 */
export function settleTimes(
  often: Often,
  said: readonly Said[],
  repeat: Repeat,
): { more: number; asked: { times: number; range: TextRange } | null } {
  switch (often.kind) {
    case 'more':
      return { more: often.times, asked: null }
    case 'all':
      return { more: Math.max(0, often.times - 1), asked: null }
    case 'open':
      // The rows of a pattern stitch have been told once; they are no piece yet.
      return { more: often.pattern ? 0 : 1, asked: null }
    case 'through':
      return { more: timesTo(often.number, repeat), asked: null }
    case 'length':
    case 'none':
      return { more: 1, asked: null }
    case 'until':
      return { more: timesUntil(often.rows, repeat), asked: null }
    case 'bare': {
      const { times } = often
      const ways = [times, times - 1].filter((more) => agrees(more, said, repeat))
      if (ways.length === 1) return { more: ways[0] ?? times, asked: null }
      return { more: times, asked: { times, range: often.said } }
    }
  }
}

/**
 * How often rows are worked more until there are so many of them; counted from the first row of all
 * where only that comes out, or where the next number says so.
 */
function timesUntil(wanted: number, { lines, last, next }: Repeat): number {
  const ofThese = wanted / lines - 1
  const ofAll = (wanted - last) / lines
  const isWhole = (more: number): boolean => Number.isInteger(more) && more >= 0
  if (isWhole(ofAll) && (!isWhole(ofThese) || (ofThese !== ofAll && next === wanted + 1)))
    return ofAll
  return Math.max(0, Math.ceil(ofThese))
}

/** Whole times from the last row told up to the row of this number. */
const timesTo = (number: number, { lines, last }: Repeat): number =>
  Math.max(0, Math.floor((number - last) / Math.max(1, lines)))

function agrees(more: number, said: readonly Said[], { lines, rows, last, next }: Repeat): boolean {
  const stated = said.find(({ kind }) => kind === 'rows')
  if (stated) return stated.count === rows * (more + 1)
  // A next number that goes on as if nothing were repeated tells nothing.
  if (next === null || next === last + 1) return true
  return next === last + lines * more + 1
}
