import { lex } from './lex'
import { sizeNames } from './onlySizes'

/** How many sizes a text is written in: of "24 (28, 32)" three; 1 where it has no such list. */
export const sizesIn = (text: string): number =>
  [
    ...lex(text, 0).map(({ sizes }) => sizes),
    ...sizeNames(text).map(({ length }) => length),
  ].reduce((most, count) => Math.max(most, count), 1)

/** Does a text state sizes: numbers as "24 (28, 32)", or the word itself? */
export const statesSizes = (text: string): boolean => /\bsizes?\b/i.test(text) || sizesIn(text) > 1
