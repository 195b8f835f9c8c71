/** An entry of a list with a key that no other entry has. */
export interface Keyed<Entry> {
  readonly key: string
  readonly entry: Entry
}

/**
 * Keys for a list by the names of its entries; one that comes again gets a number, since equal keys
 * would end the page. Names that stay keep what was opened beside them when others come or go.
 */
export function keyed<Entry>(
  entries: readonly Entry[],
  nameOf: (entry: Entry) => string,
): Keyed<Entry>[] {
  const said = new Map<string, number>()
  return entries.map((entry) => {
    const name = nameOf(entry)
    const count = (said.get(name) ?? 0) + 1
    said.set(name, count)
    return { key: `${count} ${name}`, entry }
  })
}
