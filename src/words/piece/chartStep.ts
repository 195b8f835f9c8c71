import { pegsInWork } from '../../loom/state'
import { layOut } from '../../pattern/layout'
import type { Pattern } from '../../pattern/pattern'
import { rowNumbers, schedule } from '../../pattern/schedule'
import { withOnBench } from '../../pattern/sections'
import type { Work } from '../../pattern/work'
import { workOnce } from '../../pattern/workOnce'
import type { StepWork } from '../../pattern/workPiece'
import type { Terms } from '../../stitches/stitch'
import type { LabelKind } from '../language'
import { labelKind } from '../sentence'
import { writeWords, type Line } from '../write'

/** How a chart reads where it stands in the piece, and which of its times read so, from 1. */
export interface ChartReading {
  readonly lines: readonly Line[]
  readonly times: readonly number[]
}

export interface ChartStep {
  readonly kind: LabelKind
  /** Rows of the chart, worked once. */
  readonly rows: number
  /** More than one where later times read differently, as when an odd number of rows turns. */
  readonly readings: readonly ChartReading[]
}

/** The rows of a chart as this step of the piece works them, in words. */
export function readChartStep(pattern: Pattern, step: StepWork, terms: Terms): ChartStep | null {
  const works = chartWorks(pattern, step)
  const [first] = works
  if (!first) return null
  const { shape } = first.run.habits
  const round = first.run.rows.every((run) => labelKind(run, shape) === 'round')
  const waiting = loopsWaiting(step)
  const readings: { lines: readonly Line[]; times: number[]; text: string }[] = []
  works.forEach((work, index) => {
    const lines = writeWords(work, terms).lines.map((line) =>
      leavesLoops(work, line, waiting) ? withoutCount(line) : countOnly(line, waiting),
    )
    const text = textOf(lines)
    const known = readings.find((reading) => reading.text === text)
    if (known) known.times.push(index + 1)
    else readings.push({ lines, times: [index + 1], text })
  })
  return { kind: round ? 'round' : 'row', rows: first.passes.length, readings }
}

export const textOf = (lines: readonly Line[]): string => lines.map(({ text }) => text).join('\n')

/** The chart's work at each of its times, with the loom as it is then. Whole times only. */
export function chartWorks(pattern: Pattern, { step, section, rows }: StepWork): readonly Work[] {
  if (step.kind !== 'chart' || !section || !rows) return []
  const put = withOnBench(pattern, section.name)
  const passes = schedule(section.chart)
  const length = passes.length
  // A chart longer than a whole piece can be is read as it stands by itself.
  if (rows.rows.length < length) return [workOnce(put)]
  const layout = layOut(section.chart, pattern.loom.pegs, pattern.loom.shape)
  const works: Work[] = []
  for (let start = 0; start + length <= rows.rows.length; start += length) {
    const runs = rows.rows.slice(start, start + length)
    works.push({
      pattern: put,
      layout,
      passes,
      run: {
        ...rows,
        given: rows.given.slice(start, start + length),
        rows: runs,
        start: runs[0]?.before ?? rows.start,
        end: runs.at(-1)?.after ?? rows.end,
      },
      firstRuns: runs.filter((_, index) => passes[index]?.time === 0),
      numbers: rowNumbers(section.chart),
    })
  }
  return works
}

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
