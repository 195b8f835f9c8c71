import { usualEdges } from '../pattern/piece'
import type { Pattern } from '../pattern/pattern'
import { workPiece } from '../pattern/workPiece'
import { languages } from '../words/languages'
import { piecePhrases } from '../words/piece/phrases'
import { writePiece } from '../words/piece/write'

/** How a piece of one chart is begun and ended: in a sentence, or told in full where it is unusual. */
export function edgeLines(pattern: Pattern): {
  readonly begin: readonly string[]
  readonly end: readonly string[]
} {
  const { loom, style, piece } = pattern
  const { start, finish, finishing } = languages[style.terms]
  const usual = piece.steps.map(
    (step) =>
      (step.kind === 'cast on' && step.how === usualEdges.castOn) ||
      (step.kind === 'bind off' && step.how === usualEdges.bindOff),
  )
  const told = (index: number): readonly string[] =>
    writePiece(workPiece(pattern), style.terms).blocks.flatMap(({ lines }) =>
      lines.filter(({ step }) => step === index).map(({ text }) => text),
    )
  const last = piece.steps.length - 1
  return {
    begin: usual[0] ? [start(loom.pegs, loom.shape, finishing)] : told(0),
    end: usual[last] ? [finish(finishing)] : [...told(last), piecePhrases[style.terms].weaveIn],
  }
}
