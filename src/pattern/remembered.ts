/**
 * A function of objects that never change, asked only once for each of them: rows, lines and what is
 * made of them are kept from edit to edit. `kind` tells apart what is asked of the same object.
 */
export function remembered<Key extends object, Value, Kind = undefined>(
  ask: (key: Key, kind: Kind) => Value,
): (key: Key, kind?: Kind) => Value {
  const answers = new WeakMap<Key, Map<Kind, Value>>()
  return (key, kind) => {
    let kinds = answers.get(key)
    if (!kinds) answers.set(key, (kinds = new Map()))
    const known = kinds.get(kind as Kind)
    if (known !== undefined || kinds.has(kind as Kind)) return known as Value
    const value = ask(key, kind as Kind)
    kinds.set(kind as Kind, value)
    return value
  }
}
