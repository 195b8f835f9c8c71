import { setReadAs } from '../pattern/edits/words'
import { fix, nowhere, type Finding } from '../pattern/finding'
import type { Reading, ReadSettings, TextRange } from './read/reading'

/** "Row 2 (WS):", "WS rows: purl", "2nd row (wrong side)": a row as its wrong side looks. */
const saidOfRow =
  /\b(?:rows?|rnds?)\b[^.:\n]{0,24}(?:\bWS\b|\bwrong[- ]side\b)|^\s*WS\b[^.\n]{0,20}:/im

/**
 * Where flat words speak of a wrong-side row though they are read for a loom, on which the right
 * side faces the knitter in every row (common practice); null: nowhere, or they are read as they
 * should be.
 */
export function wrongSideRow(
  text: string,
  { shape, needles }: Pick<ReadSettings, 'shape' | 'needles'>,
): TextRange | null {
  if (shape !== 'bar' || needles) return null
  const match = saidOfRow.exec(text)
  return match && { from: match.index, to: match.index + match[0].length }
}

export const wrongSideMessage =
  'These words have wrong-side rows, and are read as if the right side faced the knitter in each.'

/** A hint at the setting for needles, where words speak of wrong-side rows and it is off. */
export function needlesHint({ text, settings }: Reading): Finding[] {
  const range = wrongSideRow(text, settings)
  if (!range) return []
  return [
    {
      id: 'words, wrong-side',
      rule: 'wrong-side',
      severity: 'hint',
      place: { ...nowhere, text: range },
      message: wrongSideMessage,
      advice: 'If this is a needle pattern, have it read as one: wrong-side rows are turned over.',
      fixes: [fix('Read as a needle pattern', (p) => setReadAs(p, { needles: true }))],
    },
  ]
}
