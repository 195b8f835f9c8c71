import type { Column } from './blocks'
import { textLine, type Page, type PageContent } from './page'
import type { Paper } from './paper'
import type { Language } from '../../languages/language'
import { breakLines, widthOf } from './text'

/** Add the title and the page number to the foot of each page, and to a draft its mark over it. */
export function footed(
  pages: readonly PageContent[],
  title: string,
  { width, height, margins }: Paper,
  { type }: Column,
  { booklet: phrases, drawings }: Language,
  isDraft: boolean,
): Page[] {
  const style = { size: type.small }
  // Between the live area and the edge, a little nearer to the live area.
  const y = height - 0.5 * margins.bottom + 0.3 * type.small
  const mark = isDraft
    ? textLine(drawings.draft, width - margins.right, 0.5 * margins.top + 0.36 * type.heading, {
        size: type.heading,
        weight: 'bold',
        anchor: 'end',
      })
    : []
  return pages.map((page, index) => {
    const number = phrases.page(index + 1, pages.length)
    const measure =
      width - margins.left - margins.right - widthOf(number, type.small) - 2 * type.small
    return {
      ...page,
      width,
      height,
      texts: [
        ...mark,
        ...page.texts,
        ...textLine(shortened(title, measure, type.small), margins.left, y, style),
        ...textLine(number, width - margins.right, y, { ...style, anchor: 'end' }),
      ],
    }
  })
}

function shortened(text: string, measure: number, size: number): string {
  if (widthOf(text, size) <= measure) return text
  const [first = ''] = breakLines(text, measure - widthOf('\u2026', size), size)
  return `${first}\u2026`
}
