import { pegsInWork } from '../../loom/state'
import { chartWorks, type Work } from '../../pattern/work'
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
    const lines = writeWords(work, terms).lines.map((line) =>
      leavesLoops(work, line, waiting) ? withoutCount(line) : countOnly(line, waiting),
    )
    const text = textOf(lines)
    const known = readings.find((reading) => reading.text === text)
    if (known) known.times.push(time + 1)
    else readings.push({ lines, times: [time + 1], text })
  })
  return { kind: round ? 'round' : 'row', rows: first.passes.length, readings }
}

export const textOf = (lines: readonly Line[]): string => lines.map(({ text }) => text).join('\n')

/** Loops on pegs that are not in work: they are not counted with the row. */
const loopsWaiting = ({ before, pegs }: StepWork): number =>
  before.stacks.filter((stack, peg) => stack.length > 0 && (peg < pegs.from || peg > pegs.to))
    .length

/**
 * A row that leaves some of the loops in work where they are, and none more or fewer: a count of all
 * would not be that of the pegs that it names.
 */
function leavesLoops({ passes, run }: Work, line: Line, waiting: number): boolean {
  if (line.kind !== 'row') return false
  const first = run.rows[passes.findIndex(({ row }) => row === line.rows.from)]
  if (!first) return false
  const { row, before, after } = first
  const loops = (from: number, to: number) =>
    before.stacks.slice(from, to + 1).filter((stack) => stack.length > 0).length
  const all = loops(0, before.stacks.length)
  return loops(row.from, row.to) < all - waiting && all === pegsInWork(after)
}

const withoutCount = (line: Line): Line => ({
  ...line,
  text: line.text.replace(/ \(\d+ sts?\)$/, ''),
})

const countAtEnd = /(\d+) sts?\)$/

function countOnly(line: Line, waiting: number): Line {
  if (waiting === 0) return line
  const text = line.text.replace(countAtEnd, (_, count: string) => {
    const stitches = Number(count) - waiting
    return `${stitches} ${stitches === 1 ? 'st' : 'sts'})`
  })
  return { ...line, text }
}
