import type { Band } from '../pattern/pattern'
import type { Said, Sayings } from './sayings'

/** The passes and lines to be written again; lines of the version before stand outside. */
export interface Rewritten {
  readonly from: number
  /** One past the last pass. */
  readonly to: number
  /** Old lines before `firstLine`, and from `nextLine` on, stay. */
  readonly firstLine: number
  readonly nextLine: number
}

export interface Written {
  readonly sayings: Sayings
  /** The first pass of each line. */
  readonly starts: readonly number[]
}

/**
 * What must be written again: the rows that say something else, the lines beside them (which they
 * may join, and whose counts they may change), and lines that name such a row or will do so.
 * null: nothing.
 */
export function changedStretch(now: Sayings, before: Written): Rewritten | null {
  const { sayings: old, starts } = before
  const count = now.all.length
  if (now.work.passes !== old.work.passes)
    return { from: 0, to: count, firstLine: 0, nextLine: starts.length }
  let first = 0
  while (first < count && now.all[first] === old.all[first]) first++
  if (first === count) return null
  let last = count - 1
  while (now.all[last] === old.all[last]) last--
  let reach = last
  for (let pass = first; pass <= last && reach < count - 1; pass++)
    reach = Math.max(reach, lastThatNames(old.said, pass), lastThatNames(now.said, pass))

  let firstLine = 0
  while ((starts[firstLine + 1] ?? count) < first) firstLine++
  let nextLine = firstLine
  while ((starts[nextLine] ?? count) < Math.min(reach + 2, count)) nextLine++
  for (const { from, to } of bandPasses(now)) {
    const cut = (line: number): boolean => {
      const start = starts[line] ?? count
      return start > from && start < to
    }
    while (cut(firstLine)) firstLine--
    while (cut(nextLine)) nextLine++
  }
  return { from: starts[firstLine] ?? 0, to: starts[nextLine] ?? count, firstLine, nextLine }
}

/** The last pass that may name this one because it says the same, if this one says it first. */
const lastThatNames = (said: readonly Said[], pass: number): number => {
  const same = said[pass] as Said
  return said.indexOf(same) === pass ? said.lastIndexOf(same) : pass
}

/** The passes of each band, `to` one past the last. A band is written whole. */
function bandPasses({ work }: Sayings): { from: number; to: number }[] {
  const { bands, rows } = work.chart
  let more = 0
  return bands.filter(isInside(rows.length)).map((band) => {
    const from = band.from + more
    const height = band.to - band.from + 1
    more += height * (band.times - 1)
    return { from, to: from + height * band.times }
  })
}

export const isInside =
  (rows: number) =>
  ({ to }: Band): boolean =>
    to < rows
