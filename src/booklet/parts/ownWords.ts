import type { Pattern } from '../../pattern/pattern'
import type { PieceWork } from '../../pattern/workPiece'
import { languages } from '../../languages/languages'
import { read } from '../../words/read/read'
import { readSettingsOf, type Reading } from '../../words/read/reading'
import { sectionKind } from '../../words/read/lines/sections'
import { heading, labelled, subheading, textStrips, type Column } from '../page/blocks'
import { edgeLines } from './chartWords'
import { movedContent } from '../page/page'
import type { Block, Strip } from '../page/flow'

const castOn = /\bcast(?:ing)?[ -]?on\b|\bco\b/i
const finished =
  /\b(?:bind|cast)(?:ing)?[ -]?off\b|\bbo\b|\bgather|\bgraft|\bweave\b|\bfasten off\b/i
const endsWoven = /\bweav|\bdarn|\bends?\b[^.\n]*\bin\b|\b(?:sew|work|tuck) in\b/i

/**
 * The designer's own words as they stand: every line and empty line is kept, what the reader knows
 * as a heading or as the label of a row is set as one. Casting on and off is told where they do not tell it.
 */
export function ownWordBlocks(piece: PieceWork, words: string, column: Column): Block[] {
  const { pattern } = piece
  const { headings } = languages[pattern.style.terms]
  const edges = edgeLines(piece)
  const reading = read(words, readSettingsOf(pattern))
  const [first, ...others] = lineBlocks(reading, column)
  const lines = first ? [first, ...others] : []
  const beside = labelColumn(reading, column)
  const begin = castOn.test(words) ? [] : edges.begin.map((line) => labelled('', line, beside))
  const ending = [
    ...(finished.test(words) ? [] : edges.end),
    ...(endsWoven.test(words) ? [] : [edges.weaveIn]),
  ]
  const end = ending.map((line) => labelled('', line, beside))
  const title = first?.withNext ? words.trim().split('\n', 1)[0]?.trim() : undefined
  const named = title?.replace(/:$/, '').toLowerCase() === headings.instructions.toLowerCase()
  if (first && named) return [first, ...begin, ...others, ...end]
  const headed = title !== undefined && begin.length === 0
  return [...(headed ? [] : [heading(headings.instructions, column)]), ...begin, ...lines, ...end]
}

/** The designer's own words of one chart of a piece; its name stands over them already. */
export function namedWordBlocks(
  pattern: Pattern,
  name: string,
  words: string,
  column: Column,
): Block[] {
  const blocks = lineBlocks(read(words, readSettingsOf(pattern)), column, subheading)
  const [first, ...others] = blocks
  const title = words.trim().split('\n', 1)[0]?.trim().replace(/:$/, '').toLowerCase()
  return first?.withNext && title === name.toLowerCase() ? others : blocks
}

/** Text hangs beside the labels of rows, as in the words of the house; without any it begins at the margin. */
const labelColumn = ({ tokens }: Reading, column: Column): Column =>
  tokens.some(({ kind }) => kind === 'head') ? column : { ...column, indent: 0 }

/** Do the words explain their own stitches? */
export const explainsStitches = ({ pattern }: PieceWork, words: string): boolean =>
  read(words, readSettingsOf(pattern)).sections.some(({ title }) => sectionKind(title) === 'key')

function lineBlocks(reading: Reading, column: Column, headed: typeof heading = heading): Block[] {
  const { text, sections, tokens } = reading
  const headings = new Set(sections.map(({ range }) => range.from))
  const labelEnds = new Map(
    tokens.filter(({ kind }) => kind === 'head').map(({ range }) => [range.from, range.to]),
  )
  const beside = labelColumn(reading, column)
  const { unit } = column.type
  const blocks: Block[] = []
  let empty = 0
  let from = 0
  for (const line of text.split('\n')) {
    if (line.trim() === '') empty++
    else {
      const before = empty * unit
      const start = from + line.search(/\S/)
      const labelEnd = Math.min(labelEnds.get(start) ?? start, from + line.length)
      const label = text.slice(start, labelEnd).trim()
      const block = headings.has(from)
        ? headed(line.trim(), column)
        : label === ''
          ? { strips: lineStrips(line, beside), before: 0 }
          : labelled(label, text.slice(labelEnd, from + line.length).trim(), column)
      blocks.push({ ...block, before: Math.max(before, block.before) })
      empty = 0
    }
    from += line.length + 1
  }
  return blocks
}

/** In letter heights: how far the further lines of a line hang in, and spaces at its start. */
const hangEms = 1.5
const spaceEms = 0.4
const mostSpaces = 12

/** A line that is too long goes on hanging in, so that lines of the text are seen apart. */
function lineStrips(line: string, column: Column): Strip[] {
  const { text: size } = column.type
  const [spaces = ''] = /^\s*/.exec(line.replaceAll('\t', '    ')) ?? []
  const inset = Math.min(mostSpaces, spaces.length) * spaceEms * size
  const x = column.indent + inset
  const hang = hangEms * size
  const measure = column.measure - inset - hang
  return textStrips(line.trim(), column, { measure }).map((strip, index) => ({
    ...strip,
    ...movedContent(strip, index === 0 ? x : x + hang, 0),
  }))
}
