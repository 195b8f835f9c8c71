import { diffArrays } from 'diff'
import type { Heading } from '../../../loom/direction'
import type { Run } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import type { TextRange } from '../../read/reading'

/** A stitch of the words or of the chart at its place, in working order. */
export interface Item {
  readonly stitch: Stitch
  readonly letter: string
  /** Its lowest peg, 0-based. */
  readonly peg: number
}

export interface WordItem extends Item {
  readonly range: TextRange
}

/** Stitches from..to (not included) of the words stand where those of the chart should. */
export interface Hunk {
  readonly words: readonly [from: number, to: number]
  readonly chart: readonly [from: number, to: number]
}

/** Stitches one after the other on the pegs of a run, in working order; empty pegs are passed over. */
export function onPegs<T extends Pick<Item, 'stitch'>>(
  items: readonly T[],
  heading: Heading,
  { from, to }: Run,
  empty?: ReadonlySet<number>,
): (T & Pick<Item, 'peg'>)[] {
  const step = heading === 'forward' ? 1 : -1
  let next = heading === 'forward' ? from : to
  return items.map((item) => {
    while (empty?.has(next)) next += step
    const { width } = item.stitch
    const peg = heading === 'forward' ? next : next - width + 1
    next += step * width
    return { ...item, peg }
  })
}

/** Where two rows differ, peg by peg: both stand on the same pegs. Neighbours make one hunk. */
export function hunksByPeg(words: readonly Item[], chart: readonly Item[]): Hunk[] {
  const hunks: Hunk[] = []
  let [i, j] = [0, 0]
  let start: readonly [number, number] | null = null
  const close = () => {
    if (start) hunks.push({ words: [start[0], i], chart: [start[1], j] })
    start = null
  }
  while (i < words.length && j < chart.length) {
    if (words[i]?.letter === chart[j]?.letter) {
      close()
      i++
      j++
      continue
    }
    start ??= [i, j]
    let drift = 0
    do {
      if (drift <= 0) drift += words[i++]?.stitch.width ?? 0
      if (drift > 0) drift -= chart[j++]?.stitch.width ?? drift
    } while (drift !== 0 && i < words.length && j < chart.length)
  }
  if (i < words.length || j < chart.length) start ??= [i, j]
  i = words.length
  j = chart.length
  close()
  return hunks
}

/** Pegs that stitches take in a row. */
export const widthOf = (items: readonly Pick<Item, 'stitch'>[]): number =>
  items.reduce((sum, { stitch }) => sum + stitch.width, 0)

/**
 * Where two rows differ as lists of stitches, so that one left out moves no other; null where more
 * than `mostEdits` are added and left out.
 */
export const hunksInOrder = (
  words: readonly Item[],
  chart: readonly Item[],
  mostEdits: number,
): Hunk[] | null =>
  hunksBetween(
    words.map(({ letter }) => letter),
    chart.map(({ letter }) => letter),
    mostEdits,
  )

/** The same of any two lists of texts. */
export function hunksBetween(
  words: readonly string[],
  chart: readonly string[],
  mostEdits: number,
): Hunk[] | null {
  const least = Math.min(words.length, chart.length)
  let start = 0
  while (start < least && words[start] === chart[start]) start++
  let tail = 0
  while (tail < least - start && words.at(-1 - tail) === chart.at(-1 - tail)) tail++
  const [mine, theirs] = [words, chart].map((list) => list.slice(start, list.length - tail)) as [
    string[],
    string[],
  ]
  if (countUnmatched(mine, theirs) > mostEdits) return null
  const changes = diffArrays(mine, theirs, { maxEditLength: mostEdits })
  if (!changes) return null
  const hunks: Hunk[] = []
  let [i, j] = [start, start]
  let [fromWords, fromChart] = [i, j]
  const close = () => {
    if (i > fromWords || j > fromChart) hunks.push({ words: [fromWords, i], chart: [fromChart, j] })
  }
  for (const { added, removed, count } of changes) {
    if (added) j += count
    else if (removed) i += count
    else {
      close()
      i += count
      j += count
      fromWords = i
      fromChart = j
    }
  }
  close()
  return hunks
}

/** How many texts of both lists have none in the other, whatever their order: so many edits at least. */
function countUnmatched(words: readonly string[], chart: readonly string[]): number {
  const left = new Map<string, number>()
  for (const text of words) left.set(text, (left.get(text) ?? 0) + 1)
  let unmatched = words.length
  for (const text of chart) {
    const count = left.get(text) ?? 0
    left.set(text, count - 1)
    unmatched += count > 0 ? -1 : 1
  }
  return unmatched
}
