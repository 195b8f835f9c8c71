/**
 * The beginning of somebody's text as it stands in a message, on one line, at most `most`
 * characters; "…" stands for the rest. Whatever quotes a file or words goes through this.
 */
export function excerpt(text: string, most = 40): string {
  // So much of it is looked at, however long it is.
  const line = text
    .slice(0, 4 * most)
    .replaceAll(/\s+/g, ' ')
    .trim()
  const characters = Array.from(line)
  const isWhole = characters.length <= most && text.length <= 4 * most
  return isWhole
    ? line
    : `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
}

/** The same in quotes, with marks that cannot be seen written out. */
export const inQuotes = (text: string, most = 40): string => JSON.stringify(excerpt(text, most))
