import type { Pattern } from '../../pattern/pattern'
import { workPieceOnce } from '../../pattern/workOnce'
import { piecePhrases } from '../../words/piece/phrases'
import { writePiece } from '../../words/piece/write'

/** How a piece of one chart is begun and ended: what is done, and how, as in a piece of several. */
export function edgeLines(pattern: Pattern): {
  readonly begin: readonly string[]
  readonly end: readonly string[]
  /** Said of what ends hang when all is done. */
  readonly weaveIn: string
} {
  const { style, piece } = pattern
  const lines = writePiece(workPieceOnce(pattern), style.terms).blocks.flatMap(
    (block) => block.lines,
  )
  const told = (index: number): readonly string[] =>
    lines.filter(({ step }) => step === index).map(({ text }) => text)
  return {
    begin: told(0),
    end: told(piece.steps.length - 1),
    weaveIn: piecePhrases[style.terms].weaveIn,
  }
}
