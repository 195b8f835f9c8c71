import { num } from './measure'

/** A stretch of a row in which every stitch is the same as the one `period` stitches on. */
export interface Repetition {
  /** First stitch, and the one after the last; at least two whole periods. */
  readonly from: number
  readonly to: number
  readonly period: number
}

/**
 * All maximal repetitions of a list of stitches, by rising period, without those that a shorter
 * period explains; of single runs of like stitches only those that `counted` does not hold.
 * `runEnd`: one past the last stitch of the run that each stitch belongs to.
 */
export function findRepetitions(
  stitches: Int32Array,
  runEnd: Int32Array,
  counted: readonly boolean[],
): Repetition[] {
  const found: Repetition[] = []
  const count = stitches.length
  for (let from = 0; from < count; from = num(runEnd, from)) {
    const to = num(runEnd, from)
    if (to - from > 1 && !counted[num(stitches, from)]) found.push({ from, to, period: 1 })
  }
  for (let period = 2; period * 2 <= count; period++) {
    let from = 0
    while (from + period * 2 <= count) {
      // From the far end back, so that what does not repeat is left behind in a step or two.
      let at = from + period - 1
      while (at >= from && stitches[at] === stitches[at + period]) at--
      if (at < from) {
        at = from + period
        while (at + period < count && stitches[at] === stitches[at + period]) at++
        if (num(runEnd, from) < at + period) add(found, from, at + period, period)
      }
      from = at + 1
    }
  }
  return found
}

function add(found: Repetition[], from: number, to: number, period: number): void {
  for (const known of found)
    if (known.from <= from && known.to >= to && period % known.period === 0) return
  found.push({ from, to, period })
}

/** For each of a row's repetitions the first that has the same stitches wherever both would lie. */
export function sameRepetitions(found: readonly Repetition[], stitches: Int32Array): number[] {
  const same: number[] = []
  for (let i = 0; i < found.length; i++) {
    let first = i
    for (let j = i - 1; j >= 0 && found[j]?.period === found[i]?.period; j--)
      if (same[j] === j && isSame(found[j] as Repetition, found[i] as Repetition, stitches))
        first = j
    same.push(first)
  }
  return same
}

function isSame(a: Repetition, b: Repetition, stitches: Int32Array): boolean {
  const { period } = a
  const into = (((b.from - a.from) % period) + period) % period
  for (let i = 0; i < period; i++)
    if (stitches[a.from + ((into + i) % period)] !== stitches[b.from + i]) return false
  return true
}
