/**
 * The same function, but each object is asked about once: the answer is kept as long as the object is.
 * For what depends on that object alone and never changes, as rows and patterns do.
 */
export function memo<Key extends object, Made>(make: (key: Key) => Made): (key: Key) => Made {
  const known = new WeakMap<Key, { readonly made: Made }>()
  return (key) => {
    const found = known.get(key)
    if (found) return found.made
    const made = make(key)
    known.set(key, { made })
    return made
  }
}
