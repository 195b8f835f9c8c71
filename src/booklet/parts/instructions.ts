import type { Pattern } from '../../pattern/pattern'
import type { PatternRun, Work } from '../../pattern/work'
import type { Terms } from '../../stitches/stitch'
import { abbreviations, type Abbreviation } from '../../words/abbreviations'
import { languages } from '../../words/languages'
import { cautions } from '../../words/statements'
import { writeWords } from '../../words/write'
import { edgeLines } from './edges'
import { heading, labelled, textStrips, type Column } from '../page/blocks'
import type { Block } from '../page/flow'

/** The instructions, a line for each round or run of rounds, with their labels hanging. */
export function wordBlocks(work: Work, column: Column): Block[] {
  const { style } = work.pattern
  const { headings } = languages[style.terms]
  const { begin, end, weaveIn } = edgeLines(work.pattern)
  const lines = writeWords(work, style.terms).lines.map(({ label, text }) =>
    labelled(label, text.slice(label.length).trim(), column),
  )
  return [
    heading(headings.instructions, column),
    ...together(begin.map((line) => labelled('', line, column))),
    ...lines,
    ...together([...end, weaveIn].map((line) => labelled('', line, column))),
  ]
}

/** What is done, how it is done and what comes after it stay on one page. */
const together = (blocks: readonly Block[]): Block[] =>
  blocks.map((block, index) => ({ ...block, withNext: index < blocks.length - 1 }))

/** So many abbreviations at least stand on the page that their list ends on. */
const fewestOnPage = 3

/** Every abbreviation that the words use, with what the hands do. */
export function abbreviationBlocks(work: Work, column: Column): Block[] {
  const { terms } = work.pattern.style
  return abbreviationList(abbreviations(work, terms), terms, column)
}

/** What stands beside an abbreviation; the steps of the plain knit begin with its name, and no word stands twice. */
const explained = ({ abbr, name, steps, stitch }: Abbreviation): string => {
  if (!steps) return name
  return abbr === name || stitch?.role === 'knit' ? steps : `${name}. ${steps}`
}

export const abbreviationList = (
  list: readonly Abbreviation[],
  terms: Terms,
  column: Column,
): Block[] => [
  heading(languages[terms].headings.abbreviations, column),
  ...list.map((entry, index): Block => {
    const block = labelled(entry.abbr, explained(entry), column)
    const isNearEnd = index < list.length - 1 && index >= list.length - fewestOnPage
    return isNearEnd ? { ...block, beforeNext: 4 } : block
  }),
]

/** What to mind with things for babies and children; nothing for other things. */
export function cautionBlocks(
  pattern: Pattern,
  runs: readonly PatternRun[],
  column: Column,
): Block[] {
  const strips = cautions(pattern, runs).flatMap((caution) => textStrips(caution, column))
  return strips.length > 0
    ? [heading(languages[pattern.style.terms].headings.cautions, column), { strips, before: 0 }]
    : []
}
