import type { RowPair } from '../comparison'

/** Longer stretches stay where they are, and so many places are tried for the others. */
const longest = 64
const mostPlaces = 256

/** One side of the matching: what each of its rows says, and whose row it is. */
export interface Matched {
  readonly says: (index: number) => string
  /** The chart row, or the line of the words, that a row comes from. */
  readonly source: (index: number) => number
}

/** A stretch of `pairs`, `to` not included, whose rows stand alone. */
interface Gap {
  readonly from: number
  readonly to: number
  /** Where it may begin as well, itself included. */
  readonly starts: readonly number[]
}

/**
 * Of rows that say the same, any may be the one that is left out. Where the same row of a band, or
 * the same line of the words, can be it every time, that is the one: then it is one difference. Of
 * several such, the one that comes from the fewest rows: times of one row before several rows.
 */
export function slide(
  pairs: RowPair[],
  side: 'read' | 'pass',
  { says, source }: Matched,
): RowPair[] {
  const index = (at: number): number => pairs[at]?.[side] ?? -1
  const gaps = gapsOf(pairs, side, (a, b) => says(index(a)) === says(index(b)))
  if (gaps.every(({ starts }) => starts.length === 1)) return pairs
  const keyOf = (gap: Gap, start: number): string =>
    pairs
      .slice(start, start + gap.to - gap.from)
      .map((_, n) => source(index(start + n)))
      .join(' ')
  const keys = gaps.map((gap) => gap.starts.map((start) => keyOf(gap, start)))
  const counts = new Map<string, number>()
  for (const ofGap of keys)
    for (const key of new Set(ofGap)) counts.set(key, (counts.get(key) ?? 0) + 1)
  const result = [...pairs]
  for (const [n, gap] of gaps.entries()) {
    let best = gap.from
    let most = counts.get(keyOf(gap, best)) ?? 0
    let fewest = sourcesIn(keyOf(gap, best))
    for (const [choice, start] of gap.starts.entries()) {
      const key = keys[n]?.[choice] ?? ''
      const count = counts.get(key) ?? 0
      const sources = sourcesIn(key)
      if (count > most || (count === most && sources < fewest)) {
        best = start
        most = count
        fewest = sources
      }
    }
    if (best !== gap.from) move(result, gap, best, side)
  }
  return result
}

/** Of how many rows, or lines, a stretch is made: its key names each as often as it comes. */
const sourcesIn = (key: string): number => new Set(key.split(' ')).size

function gapsOf(
  pairs: readonly RowPair[],
  side: 'read' | 'pass',
  same: (a: number, b: number) => boolean,
): Gap[] {
  const other = side === 'read' ? 'pass' : 'read'
  const paired = (at: number): boolean => {
    const pair = pairs[at]
    return pair !== undefined && pair.read !== null && pair.pass !== null
  }
  const alone = (at: number): boolean => pairs[at]?.[other] === null
  const gaps: Gap[] = []
  for (let from = 0; from < pairs.length;) {
    if (!alone(from)) {
      from++
      continue
    }
    let to = from + 1
    while (to < pairs.length && alone(to)) to++
    const length = to - from
    const starts = [from]
    const mayMove = () => length <= longest && starts.length < mostPlaces
    for (let at = from - 1; mayMove() && paired(at) && same(at, at + length); at--) starts.push(at)
    for (let at = to; mayMove() && paired(at) && same(at, at - length); at++)
      starts.push(at - length + 1)
    gaps.push({ from, to, starts })
    from = to
  }
  return gaps
}

/** Let the rows from `start` stand alone instead; those between meet the other side's in order. */
function move(pairs: RowPair[], { from, to }: Gap, start: number, side: 'read' | 'pass'): void {
  const length = to - from
  const [first, end] = start < from ? [start, to] : [from, start + length]
  const mine = pairs.slice(first, end).map((pair) => pair[side])
  const other = side === 'read' ? 'pass' : 'read'
  const theirs = pairs.slice(first, end).flatMap((pair) => pair[other] ?? [])
  for (let at = first; at < end; at++) {
    const free = at >= start && at < start + length
    const partner = free ? null : (theirs.shift() ?? null)
    const own = mine[at - first] ?? null
    pairs[at] = side === 'read' ? { read: own, pass: partner } : { read: partner, pass: own }
  }
}
