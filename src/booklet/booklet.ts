import { openFindings } from '../checks/open'
import { countBySeverity } from '../pattern/finding'
import type { Work } from '../pattern/work'
import { withSoundCells } from './chart/cellWish'
import { contextOf } from './context'
import { ownWordsOf } from './ownWords'
import { flow } from './page/flow'
import { footed } from './page/foot'
import type { Booklet } from './page/page'
import { papers } from './page/paper'
import { layParts } from './part'
import { bookletParts } from './parts'
import type { BookletSettings } from './settings'
import { draftWarnings, letterWarnings, openWarnings, settingWarnings } from './warnings'
import { languages } from '../languages/languages'

/**
 * Lay out the printed booklet of a pattern, part after part. Pure: text is measured with the widths
 * of the embedded fonts. With errors every page is marked as a draft. `warnings` say this first, then
 * what is not printed as it was asked for, and what to do.
 */
export function layOutBooklet(asked: Work, settings: BookletSettings): Booklet {
  const { work, warnings } = withSoundCells(asked)
  const { pattern } = work
  const language = languages[pattern.style.terms]
  const paper = papers[settings.paper]
  const context = contextOf(work, settings)
  const laid = layParts(bookletParts, context)
  const open = countBySeverity(openFindings(asked))
  const isOwn = settings.words && settings.wording === 'own'
  const wrong = isOwn ? ownWordsOf(asked.pattern).filter(({ errors }) => errors > 0) : []
  const isHere = ({ name }: { readonly name: string }) => name === asked.name
  const errors = open.error + (wrong.find(isHere)?.errors ?? 0)
  const elsewhere = wrong.filter((words) => !isHere(words)).map(({ name }) => name)
  const isDraft = errors > 0 || elsewhere.length > 0
  const pages = flow(laid.blocks, context.area)
  const ofParts = [...settingWarnings(pattern, settings), ...laid.warnings]
  return {
    title: pattern.title,
    author: pattern.designer,
    language: language.tag,
    paper: settings.paper,
    pages: footed(pages, pattern.title, paper, context.column, language, isDraft),
    warnings: [
      ...draftWarnings(errors, elsewhere, language.drawings.draft),
      ...openWarnings(open.warning, pattern.making.forBaby),
      ...warnings,
      ...new Map(ofParts.map((one) => [one.message, one])).values(),
      ...letterWarnings(pattern, isOwn),
    ],
  }
}
