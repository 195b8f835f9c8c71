/**
 * Keeps the last few things that were made, each by the parts it was made from: unchanged layers
 * stay the same objects, so that writers can keep what they wrote.
 */
export function keeper<T>(most = 8): (parts: readonly unknown[], make: () => T) => T {
  let kept: { readonly parts: readonly unknown[]; readonly made: T }[] = []
  return (parts, make) => {
    const found = kept.find(
      (entry) =>
        entry.parts.length === parts.length && entry.parts.every((part, i) => part === parts[i]),
    )
    if (found) return found.made
    const made = make()
    kept = [{ parts, made }, ...kept.slice(0, most - 1)]
    return made
  }
}
