import { readAsWritten, type Pattern, type ReadAs } from '../pattern'

/** Keep these words as the designer's own; null: have them written from the chart again. */
export const setWords = (pattern: Pattern, words: string | null): Pattern =>
  words === pattern.words
    ? pattern
    : { ...pattern, words, readAs: words === null ? readAsWritten : pattern.readAs }

/** Say how own words are to be read. */
export const setReadAs = (pattern: Pattern, change: Partial<ReadAs>): Pattern => ({
  ...pattern,
  readAs: { ...pattern.readAs, ...change },
})
