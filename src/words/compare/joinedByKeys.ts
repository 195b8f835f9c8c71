/**
 * What shares a key, at once or by way of others, in one group: the groups in the order of their first, each
 * in the order in which it came together.
 */
export function joinedByKeys<T>(
  things: readonly T[],
  keysOf: (thing: T) => readonly string[],
): readonly (readonly T[])[] {
  interface Group {
    readonly at: number
    readonly things: T[]
    readonly keys: string[]
  }
  const groups = new Set<Group>()
  const byKey = new Map<string, Group>()
  things.forEach((thing, at) => {
    const keys = keysOf(thing)
    const known = new Set(keys.flatMap((key) => byKey.get(key) ?? []))
    const [group = { at, things: [], keys: [] }, ...others] = [...known].sort((a, b) => a.at - b.at)
    groups.add(group)
    group.things.push(thing)
    group.keys.push(...keys)
    for (const other of others) {
      groups.delete(other)
      group.things.push(...other.things)
      group.keys.push(...other.keys)
    }
    for (const key of others.length > 0 ? group.keys : keys) byKey.set(key, group)
  })
  return [...groups].map((group) => group.things)
}
