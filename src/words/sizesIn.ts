import { lex } from './read/lines/lex'
import { sizeNames } from './read/lines/onlySizes'

/** How many sizes a text is written in: of "24 (28, 32)" three; 1 where it has no such list. */
export const sizesIn = (text: string): number =>
  [
    ...lex(text, 0).map(({ sizes }) => sizes),
    ...sizeNames(text).map(({ length }) => length),
  ].reduce((most, count) => Math.max(most, count), 1)
