/** A function of objects that never change, asked only once for each: lines are kept, and their items. */
export function remembered<Key extends object, Value>(
  ask: (key: Key) => Value,
): (key: Key) => Value {
  const answers = new WeakMap<Key, { readonly value: Value }>()
  return (key) => {
    let answer = answers.get(key)
    if (!answer) answers.set(key, (answer = { value: ask(key) }))
    return answer.value
  }
}
