/**
 * What an edit changed in a list. Comparing two lists entry by entry costs next to nothing, so a
 * reading that keeps one answer per row asks again only about the rows that are new.
 */
export interface Change {
  /** Entries `from`..`to` (not included) are new; they stand for `from`..`oldTo` of the old list. */
  readonly from: number
  readonly to: number
  readonly oldTo: number
}

interface Compared {
  readonly list: readonly unknown[]
  readonly old: readonly unknown[]
  readonly change: Change
}

let last: Compared | null = null

/** The entries of `list` that differ from its earlier version `old`. */
export function changeOf<T>(list: readonly T[], old: readonly T[]): Change {
  // Checks, words and drawing all ask this of the same two versions.
  if (last?.list === list && last.old === old) return last.change
  const change = compare(list, old)
  last = { list, old, change }
  return change
}

function compare<T>(list: readonly T[], old: readonly T[]): Change {
  const most = Math.min(list.length, old.length)
  const shift = old.length - list.length
  let from = 0
  while (from < most && list[from] === old[from]) from++
  let to = list.length
  while (to > from && to + shift > from && list[to - 1] === old[to - 1 + shift]) to--
  return { from, to, oldTo: to + shift }
}

/** The list with `items` in the place of what changed; the same list when they are the same. */
export function withChange<T>(
  old: readonly T[],
  { from, oldTo }: Change,
  items: readonly T[],
): readonly T[] {
  const count = oldTo - from
  const isSame = items.length === count && items.every((item, i) => item === old[from + i])
  return isSame ? old : old.toSpliced(from, count, ...items)
}
