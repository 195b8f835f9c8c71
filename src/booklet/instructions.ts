import type { Work } from '../pattern/work'
import { abbreviations } from '../words/abbreviations'
import { languages } from '../words/languages'
import { cautions } from '../words/statements'
import { writeWords } from '../words/write'
import { heading, labelled, textStrips, type Column } from './blocks'
import type { Block } from './flow'

/** The instructions, a line for each round or run of rounds, with their labels hanging. */
export function wordBlocks(work: Work, column: Column): Block[] {
  const { loom, style } = work.pattern
  const language = languages[style.terms]
  const lines = writeWords(work, style.terms).lines.map(({ label, text }) =>
    labelled(label, text.slice(label.length).trim(), column),
  )
  return [
    heading(language.headings.instructions, column),
    labelled('', language.start(loom.pegs, loom.shape, language.finishing), column),
    ...lines,
    labelled('', language.finish(language.finishing), column),
  ]
}

/** Every abbreviation that the words use, with what the hands do. */
export function abbreviationBlocks(work: Work, column: Column): Block[] {
  const { terms } = work.pattern.style
  const list = abbreviations(work, terms).map(({ abbr, name, steps }) =>
    labelled(abbr, steps ? `${name}. ${steps}` : name, column),
  )
  return [heading(languages[terms].headings.abbreviations, column), ...list]
}

/** What to mind with things for babies and children; nothing for other things. */
export function cautionBlocks({ pattern }: Work, column: Column): Block[] {
  const strips = cautions(pattern).flatMap((caution) => textStrips(caution, column))
  return strips.length > 0
    ? [heading(languages[pattern.style.terms].headings.cautions, column), { strips, before: 0 }]
    : []
}
