import type { Chart } from './chart'
import { namedOn, onChart } from './charts'
import type { Pattern } from './pattern'
import type { Step } from './piece'
import { firstStepOf, workPattern, type Work } from './work'
import { workPiece, type PieceWork } from './workPiece'

const works = new WeakMap<Chart, Work>()
const pieces = new WeakMap<readonly Step[], PieceWork>()

/** A chart, worked where a step first works it: from nothing only the first time that somebody asks for it. */
export function workOnce(pattern: Pattern, name = pattern.charts[0].name): Work {
  const { chart } = namedOn(onChart(pattern, name))
  const known = works.get(chart)
  if (known?.pattern === pattern && known.name === name) return known
  const work = workPattern(pattern, known, firstStepOf(pattern, name), name)
  works.set(chart, work)
  return work
}

/** The whole piece, worked: from nothing only the first time that somebody asks for these steps. */
export function workPieceOnce(pattern: Pattern): PieceWork {
  const { steps } = pattern
  const known = pieces.get(steps)
  if (known?.pattern === pattern) return known
  const piece = workPiece(pattern, known)
  pieces.set(steps, piece)
  return piece
}
