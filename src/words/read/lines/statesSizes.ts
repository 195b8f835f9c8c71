import { lex } from './lex'

/** Does a text state sizes: numbers as "24 (28, 32)", or the word itself? */
export const statesSizes = (text: string): boolean =>
  /\bsizes?\b/i.test(text) ||
  text.split('\n').some((line) => lex(line, 0).some(({ sizes }) => sizes > 1))
