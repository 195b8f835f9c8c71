import type { Pattern } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { sizeOf } from '../../pattern/size'
import { languages } from '../../words/languages'
import { statements } from '../../words/statements'
import { heading, paragraph, textStrips, type Column } from '../page/blocks'
import type { Block } from '../page/flow'
import { phrasesOf } from '../phrases'

/** Title, designer, one line on the loom, and what must be known before the first row. */
export function frontBlocks({ pattern }: Work, column: Column): Block[] {
  const { terms } = pattern.style
  const phrases = phrasesOf[terms]
  const size = sizeOf(pattern)
  const { width } = column
  return [
    ...titleBlocks(pattern, column),
    paragraph(phrases.description(pattern), column, 2, { measure: width }),
    ...(size
      ? [paragraph(phrases.size(size, pattern.loom.shape), column, 0, { measure: width })]
      : []),
    paragraph(statements(pattern, terms).join(' '), column, 1),
    ...noteBlocks(pattern, column),
  ]
}

export function titleBlocks({ title: text, designer }: Pattern, column: Column): Block[] {
  const { type, width } = column
  const title = textStrips(text, column, { size: type.title, measure: width })
  return [
    { strips: [{ height: 3 * type.unit, texts: [], pictures: [] }, ...title], before: 0 },
    ...(designer.trim() ? [paragraph(designer.trim(), column, 1)] : []),
  ]
}

export function noteBlocks({ notes, style }: Pattern, column: Column): Block[] {
  const text = notes.trim()
  return text === ''
    ? []
    : [
        heading(languages[style.terms].headings.notes, column),
        ...text
          .split(/\s*\n\s*/u)
          .filter(Boolean)
          .map((line, i) => paragraph(line, column, i === 0 ? 0 : 0.5)),
      ]
}
