import { writePiece } from '../../words/piece/write'
import { languages } from '../../languages/languages'
import { writeWords } from '../../words/write'
import type { Work } from '../../pattern/work'
import type { PieceWork } from '../../pattern/workPiece'
import { heading, labelled, type Column } from '../page/blocks'
import type { Block } from '../page/flow'

/** The instructions, a line for each round or run of rounds, with their labels hanging. */
export function chartWordBlocks(work: Work, piece: PieceWork, column: Column): Block[] {
  const { style } = work.pattern
  const { headings } = languages[style.terms]
  const { begin, end, weaveIn } = edgeLines(piece)
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

/** How a piece of one chart is begun and ended: what is done, and how, as in a piece of several. */
export function edgeLines(work: PieceWork): {
  readonly begin: readonly string[]
  readonly end: readonly string[]
  /** Said of what ends hang when all is done. */
  readonly weaveIn: string
} {
  const { style, steps } = work.pattern
  const lines = writePiece(work, style.terms).blocks.flatMap((block) => block.lines)
  const told = (index: number): readonly string[] =>
    lines.filter(({ step }) => step === index).map(({ text }) => text)
  return {
    begin: told(0),
    end: told(steps.length - 1),
    weaveIn: languages[style.terms].piece.weaveIn,
  }
}
