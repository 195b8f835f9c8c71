/** What came of work on the words; `fault`: the mistake of the program that ended it, or null. */
export interface Attempt<Result> {
  readonly result: Result
  readonly fault: string | null
}

/**
 * Do the first of these ways that comes to an end; where none does, the last resort. A mistake of
 * the program must not take the words, or anything else, off the bench.
 */
export function attempt<Result>(
  ways: readonly (() => Result)[],
  lastResort: () => Result,
): Attempt<Result> {
  let fault = ''
  for (const way of ways) {
    try {
      return { result: way(), fault: null }
    } catch (error) {
      fault = error instanceof Error ? error.message : String(error)
    }
  }
  return { result: lastResort(), fault }
}
