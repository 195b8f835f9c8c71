import type { Work } from '../pattern/work'
import { sizeOf } from '../pattern/size'
import { languages } from '../words/languages'
import { statements } from '../words/statements'
import { heading, paragraph, textStrips, type Column } from './blocks'
import type { Block } from './flow'
import { phrasesOf } from './phrases'

/** Title, designer, one line on the loom, and what must be known before the first row. */
export function frontBlocks({ pattern }: Work, column: Column): Block[] {
  const { type, width } = column
  const { terms } = pattern.style
  const { headings } = languages[terms]
  const title = textStrips(pattern.title, column, { size: type.title, measure: width })
  const notes = pattern.notes.trim()
  const phrases = phrasesOf[terms]
  const size = sizeOf(pattern)
  return [
    { strips: [{ height: 3 * type.unit, texts: [], pictures: [] }, ...title], before: 0 },
    ...(pattern.designer.trim() ? [paragraph(pattern.designer.trim(), column, 1)] : []),
    paragraph(phrases.description(pattern), column, 2, { measure: width }),
    ...(size
      ? [paragraph(phrases.size(size, pattern.loom.shape), column, 0, { measure: width })]
      : []),
    paragraph(statements(pattern, terms).join(' '), column, 1),
    ...(notes === '' ? [] : [heading(headings.notes, column)]),
    ...notes
      .split(/\s*\n\s*/u)
      .filter(Boolean)
      .map((text, i) => paragraph(text, column, i === 0 ? 0 : 0.5)),
  ]
}
