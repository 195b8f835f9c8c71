import { chartWorks } from '../../pattern/work'
import type { PieceWork, StepWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { writeWords, type Line } from '../write'
import type { Unit } from '../../languages/unit'
import { unitOfRow } from '../../pattern/unit'

/** How a chart reads where it stands in the piece, and which of its times read so, from 1. */
export interface ChartReading {
  readonly lines: readonly Line[]
  readonly times: readonly number[]
}

export interface ChartStep {
  readonly kind: Unit
  /** Rows of the chart, worked once. */
  readonly rows: number
  /** More than one where later times read differently, as when an odd number of rows turns. */
  readonly readings: readonly ChartReading[]
}

/** The rows of a chart as this step of the piece works them, in words. */
export function readChartStep(piece: PieceWork, index: number, terms: Terms): ChartStep | null {
  const works = chartWorks(piece, index)
  const [first] = works
  const step = piece.steps[index]
  if (!first || !step) return null
  const { shape } = first.run.habits
  const round = first.run.rows.every((run) => unitOfRow(run, shape) === 'round')
  const waiting = loopsWaiting(step)
  const readings: { lines: readonly Line[]; times: number[]; text: string }[] = []
  works.forEach((work, time) => {
    const { lines } = writeWords(work, terms, undefined, waiting)
    const text = textOf(lines)
    const known = readings.find((reading) => reading.text === text)
    if (known) known.times.push(time + 1)
    else readings.push({ lines, times: [time + 1], text })
  })
  return { kind: round ? 'round' : 'row', rows: first.passes.length, readings }
}

export const textOf = (lines: readonly Line[]): string => lines.map(({ text }) => text).join('\n')

/** Loops on pegs that are not in work. */
const loopsWaiting = ({ before, pegs }: StepWork): number =>
  before.stacks.filter((stack, peg) => stack.length > 0 && (peg < pegs.from || peg > pegs.to))
    .length
