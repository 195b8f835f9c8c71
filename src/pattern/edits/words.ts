import { namedOn } from '../charts'
import { readAsWritten, type Pattern, type ReadAs, type Sheet } from '../pattern'
import { withNamed } from './chart'

/** Keep these words as the designer's own; null: have them written from the chart again. */
export const setWords = (sheet: Sheet, words: string | null): Sheet =>
  words === namedOn(sheet).words
    ? sheet
    : {
        ...withNamed(sheet, { words }),
        readAs: words === null ? readAsWritten : sheet.readAs,
      }

/** Say how own words are to be read. */
export const setReadAs = (pattern: Pattern, change: Partial<ReadAs>): Pattern => ({
  ...pattern,
  readAs: { ...pattern.readAs, ...change },
})
