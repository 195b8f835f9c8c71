/** Put `insert` in place of characters from..to. */
export interface Swap {
  readonly from: number
  readonly to: number
  readonly insert: string
}

/** The one stretch in which two texts differ; null for none. */
export function swap(before: string, after: string): Swap | null {
  if (before === after) return null
  const least = Math.min(before.length, after.length)
  let from = 0
  while (from < least && before.charCodeAt(from) === after.charCodeAt(from)) from++
  let tail = 0
  while (
    tail < least - from &&
    before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)
  )
    tail++
  return {
    from,
    to: before.length - tail,
    insert: after.slice(from, after.length - tail),
  }
}
