import type { Terms } from '../../../languages/terms'
import { lex } from '../lines/lex'
import type { Body } from '../nodes'
import type { Spellings } from '../terms/spellings'
import { Cursor } from './cursor'
import { Parser } from './parser'
import { Parsing } from './parsing'

export interface ParseSettings {
  /** Which size of lists of sizes is read, from 0. */
  readonly size: number
  readonly spellings: Spellings
  readonly terms: Terms
}

/** Read the words of a row, after its head. Never fails: what is not known becomes remarks. */
export function parseBody(text: string, { size, spellings, terms }: ParseSettings): Body {
  const pieces = lex(text, size)
  const parsing = new Parsing(new Cursor(pieces), spellings, terms, text)
  const items = new Parser(parsing).readAll()
  const { cursor, said, remarks, reference, rows, cycle, measured, workEven, appears } = parsing
  const { unknown, side } = parsing
  return {
    items,
    said,
    reference,
    rows,
    cycle,
    measured,
    workEven,
    appears,
    tokens: cursor.tokens(),
    remarks,
    known: cursor.known,
    unknown,
    sizes: pieces
      .filter(({ sizes }) => sizes > 1)
      .map(({ sizes, from, to }) => ({ length: sizes, range: { from, to } })),
    side,
  }
}
