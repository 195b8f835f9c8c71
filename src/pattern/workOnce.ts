import type { Chart } from './chart'
import type { Pattern } from './pattern'
import type { Step } from './piece'
import { firstStepOf, workPattern, type Work } from './work'
import { workPiece, type PieceWork } from './workPiece'

const works = new WeakMap<Chart, Work>()
const pieces = new WeakMap<readonly Step[], PieceWork>()

/** The chart on the bench, worked: from nothing only the first time that somebody asks for this chart. */
export function workOnce(pattern: Pattern): Work {
  const known = works.get(pattern.chart)
  if (known?.pattern === pattern) return known
  const work = workPattern(pattern, known, firstStepOf(pattern, pattern.piece.onBench))
  works.set(pattern.chart, work)
  return work
}

/** The whole piece, worked: from nothing only the first time that somebody asks for these steps. */
export function workPieceOnce(pattern: Pattern): PieceWork {
  const { steps } = pattern.piece
  const known = pieces.get(steps)
  if (known?.pattern === pattern) return known
  const piece = workPiece(pattern, known)
  pieces.set(steps, piece)
  return piece
}
