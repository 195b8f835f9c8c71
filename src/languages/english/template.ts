/**
 * A sentence with gaps that is written strictly and read back: one text for both. "Work {name}: there is no
 * chart of this name yet." `gaps`: what may stand in each, as the source of a regular expression that
 * captures nothing.
 */
export interface Template<Gap extends string> {
  readonly write: (said: Readonly<Record<Gap, string>>) => string
  /** What stands in the gaps; null for any other sentence. */
  readonly read: (line: string) => Readonly<Record<Gap, string>> | null
}

export function template<Gap extends string>(
  text: string,
  gaps: Readonly<Record<Gap, string>>,
): Template<Gap> {
  const parts = text.split(/\{(\w+)\}/)
  const names = parts.filter((_, index) => index % 2 === 1) as Gap[]
  const inTurn = (word: (part: string) => string, gap: (name: Gap) => string): string =>
    parts.map((part, index) => (index % 2 === 1 ? gap(part as Gap) : word(part))).join('')
  const source = inTurn(
    (words) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'),
    (name) => `(?<${name}>${gaps[name]})`,
  )
  const pattern = new RegExp(`^\\s*${source}\\s*$`)
  return {
    write: (said) =>
      inTurn(
        (words) => words,
        (name) => said[name],
      ),
    read: (line) => {
      const found = pattern.exec(line)?.groups
      if (!found) return null
      return Object.fromEntries(names.map((name) => [name, found[name] ?? ''])) as Record<
        Gap,
        string
      >
    },
  }
}
