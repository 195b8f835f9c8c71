/** A stretch of a row in which every stitch is the same as the one `period` stitches on. */
export interface Repetition {
  /** First stitch, and the one after the last; at least two whole periods. */
  readonly from: number
  readonly to: number
  readonly period: number
}

/**
 * All maximal repetitions of a list of stitches, by rising period, without those that a shorter
 * period explains. A repetition with period d has a match at some multiple of d, so only those
 * places are tried: next to nothing for a row without repeats, at most n squared / 4 comparisons
 * for one that repeats throughout.
 */
export function findRepetitions(stitches: Int32Array): Repetition[] {
  const found: Repetition[] = []
  const count = stitches.length
  for (let period = 1; period * 2 <= count; period++) {
    for (let at = 0; at + period < count;) {
      if (stitches[at] !== stitches[at + period]) {
        at += period
        continue
      }
      let from = at
      while (from > 0 && stitches[from - 1] === stitches[from - 1 + period]) from--
      let end = at + 1
      while (end + period < count && stitches[end] === stitches[end + period]) end++
      if (end - from >= period) add(found, from, end + period, period)
      at = (Math.floor(end / period) + 1) * period
    }
  }
  return found
}

function add(found: Repetition[], from: number, to: number, period: number): void {
  for (const known of found)
    if (period % known.period === 0 && known.from <= from && known.to >= to) return
  found.push({ from, to, period })
}
