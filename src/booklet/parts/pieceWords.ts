import type { PieceWork } from '../../pattern/workPiece'
import { languages } from '../../languages/languages'
import { writePiece, type PieceBlock, type PieceLine } from '../../words/piece/write'
import { heading, labelled, subheading, type Column } from '../page/blocks'
import type { Block, Link } from '../page/flow'
import { namedWordBlocks } from './ownWords'

/** The instructions from cast-on to bind-off; with the designer's own words where they are chosen. */
export function pieceWordBlocks(work: PieceWork, own: boolean, column: Column): Block[] {
  const { terms } = work.pattern.style
  const { headings } = languages[terms]
  const { blocks } = writePiece(work, terms, own)
  const isSecond = ({ lines }: PieceBlock) => lines.every(({ kind }) => kind === 'second')
  const print = ({ heading: name, lines }: PieceBlock): Block[] => {
    const printed = lineBlocks(work, lines, column)
    return [
      subheading(name, column),
      ...(printed.length < fewLines
        ? linkedOn(printed, lines.some(isEdge) ? links.afterEdge : links.afterRow)
        : printed),
    ]
  }
  return [
    { ...heading(headings.instructions, column) },
    ...linkedOn(blocks.filter((block) => !isSecond(block)).flatMap(print), links.toFinish),
    subheading(headings.finishing, column),
    labelled('', languages[terms].piece.weaveIn, column),
    ...blocks.filter(isSecond).flatMap(print),
  ]
}

/** A row with the edge after it; an edge with how it is done, and with what is done next; the last line with the finishing. */
const links = { afterRow: 1, how: 2, afterEdge: 3, toFinish: 4 } as const

/** A part with fewer lines than this stays with what is done next, as a row with the edge after it. */
const fewLines = 3

/** The last of these goes along with what follows: a line to end with is not left alone. */
const linkedOn = (blocks: readonly Block[], link: Link): Block[] =>
  blocks.map((block, index) =>
    index === blocks.length - 1 ? { ...block, beforeNext: block.beforeNext ?? link } : block,
  )

const isEdge = ({ kind }: PieceLine): boolean => kind === 'cast on' || kind === 'bind off'

/** What stands over the lines it speaks of. */
const leads = (line: PieceLine): boolean =>
  isEdge(line) || line.kind === 'pegs' || line.text.endsWith(':')

/** "Work Heel, Rows 1-30:" says nothing under its heading where the whole chart is worked once and follows. */
const saysNothing = ({ pattern }: PieceWork, line: PieceLine, next: PieceLine | undefined) => {
  const step = line.kind === 'chart' ? pattern.steps[line.step ?? -1] : undefined
  return step?.kind === 'chart' && step.times === 1 && (next?.chart ?? null) !== null
}

function lineBlocks(work: PieceWork, lines: readonly PieceLine[], column: Column): Block[] {
  return lines.flatMap((line, index): Block[] => {
    if (saysNothing(work, line, lines[index + 1])) return []
    if (line.kind === 'own' && line.chart)
      return namedWordBlocks(work.pattern, line.chart.section, line.text, column)
    const text = line.text.slice(line.label.length).trim()
    const block = labelled(line.label, text, column)
    if (!leads(line) || index === lines.length - 1) return [block]
    return [isEdge(line) ? { ...block, beforeNext: links.how } : { ...block, withNext: true }]
  })
}
