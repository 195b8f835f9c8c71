import { group } from 'd3-array'

/** At least one, the first of them first. */
export type Found<T> = readonly [T, ...T[]]

/**
 * What shares a key, at once or by way of others, in one group: the groups in the order of their first, each
 * in order.
 */
export function joinedByKeys<T>(
  things: readonly T[],
  keysOf: (thing: T) => readonly string[],
): readonly Found<T>[] {
  /** Of each thing an earlier one of its group, of the first of them itself. */
  const earlier: number[] = []
  const firstOf = (at: number): number => {
    let first = at
    while (earlier[first] !== first) first = earlier[first] as number
    return (earlier[at] = first)
  }
  const withKey = new Map<string, number>()
  things.forEach((thing, at) => {
    earlier.push(at)
    for (const key of keysOf(thing)) {
      const other = withKey.get(key)
      if (other === undefined) {
        withKey.set(key, at)
        continue
      }
      const [mine, theirs] = [firstOf(at), firstOf(other)]
      earlier[Math.max(mine, theirs)] = Math.min(mine, theirs)
    }
  })
  return [...group(things, (_, at) => firstOf(at)).values()] as unknown as Found<T>[]
}
