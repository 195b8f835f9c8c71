import { lex } from '../lex'
import type { Body } from '../nodes'
import type { Spellings } from '../spellings'
import { Cursor } from './cursor'
import { Parser } from './parser'

export interface ParseSettings {
  readonly size: number
  readonly spellings: Spellings
}

/** Read the words of a row, after its head. Never fails: what is not known becomes remarks. */
export function parseBody(text: string, { size, spellings }: ParseSettings): Body {
  const pieces = lex(text, size)
  const parser = new Parser(new Cursor(pieces), spellings, text)
  const items = parser.readAll()
  const { cursor, said, remarks } = parser
  return {
    items,
    said,
    reference: parser.reference,
    rows: parser.rows,
    measured: parser.measured,
    workEven: parser.workEven,
    tokens: cursor.tokens,
    remarks,
    known: cursor.known,
    unknown: parser.unknown,
    sizes: pieces
      .filter(({ sizes }) => sizes > 1)
      .map(({ sizes, from, to }) => ({ length: sizes, range: { from, to } })),
    side: parser.side,
  }
}
