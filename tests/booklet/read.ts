import { layOutBooklet } from '../../src/booklet/booklet'
import { pageTexts, type Booklet } from '../../src/booklet/page/page'
import { usualSettings, type BookletSettings } from '../../src/booklet/settings'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'

export const layOut = (pattern: Pattern, settings: Partial<BookletSettings> = {}): Booklet =>
  layOutBooklet(workPattern(pattern), { ...usualSettings, ...settings })

/** The page's own text, line by line, without spaces at breaks; what stands in pictures is left out. */
export const pageText = (booklet: Booklet): string[] =>
  booklet.pages.map(({ texts }) =>
    texts
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/gu, ' '),
  )

export const allText = (booklet: Booklet): string => pageText(booklet).join(' ')

export const oneLine = (text: string): string => text.replace(/\s+/gu, ' ').trim()

/** How often a text stands in another. */
export const timesIn = (all: string, part: string): number => all.split(part).length - 1

export const titlesOf = ({ pages }: Booklet): string[] =>
  pages.flatMap(({ pictures }) => pictures.map(({ scene }) => scene.title))

export const textsOf = (booklet: Booklet) => booklet.pages.flatMap((page) => pageTexts(page))
