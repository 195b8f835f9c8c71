import type { Chart } from '../pattern/chart'
import { memo } from '../pattern/memo'
import type { Pattern, Row, Run } from '../pattern/pattern'
import { schedule } from '../pattern/schedule'
import type { PatternRun, Work } from '../pattern/work'
import type { PieceWork } from '../pattern/workPiece'
import { cellRatio } from './geometry'
import { usualColumns } from './slots'

/** A row of a chart with its neighbours, as a small chart. */
export interface RowsAround {
  readonly work: Work
  /** Which row of the small chart it is. */
  readonly row: number
}

/**
 * The row that a step works at this pass (from 0), with the rows worked just before and after it in the step:
 * at the end of a band, the band's first row. null where the step works no chart.
 */
export function rowsAround(piece: PieceWork, step: number, pass: number): RowsAround | null {
  const { chart: named, rows, list, layout } = piece.steps[step] ?? {}
  if (!named || !rows || !list || !layout || !rows.rows[pass]) return null
  const once = schedule(named.chart).length
  const from = Math.max(0, pass - 1)
  const part = <T>(all: readonly T[]): readonly T[] => all.slice(from, pass + 2)
  const runs: readonly PatternRun[] = part(rows.rows)
  const shown: readonly Row[] = part(list)
  const numbers = runs.map((_, index) => ((from + index) % once) + 1)
  const chart: Chart = { ...named.chart, bands: [], rows: shown }
  const work: Work = {
    ...named,
    chart,
    pattern: atArmsLength(piece.pattern),
    layout,
    passes: numbers.map((number, row) => ({ row, time: 0, number })),
    run: { ...rows, rows: runs, given: part(rows.given) },
    firstRuns: runs,
    numbers,
    step,
    piece,
  }
  return { work, row: pass - from }
}

/** Height of a cell for each mm of its width, at least: what is seen at arm's length needs more than the gauge gives. */
const leastRatio = 0.86

const atArmsLength = memo((pattern: Pattern): Pattern =>
  cellRatio(pattern) >= leastRatio
    ? pattern
    : { ...pattern, gauge: { stitches: leastRatio, rows: 1 } },
)

/**
 * The columns, or pegs, of a drawing of so many that hold these pegs. They stand still while work goes on within
 * them, then go on by half of themselves.
 */
export function slotsAround({ chart, layout }: Work, pegs: Run, most: number): Run {
  const isChart = usualColumns(chart, layout) === 'chart'
  const all = isChart ? chart.columns : layout.pegs
  const place = (peg: number): number => (isChart ? (layout.columnOf[peg] ?? 0) : peg)
  const width = Math.min(pegs.to - pegs.from + 1, most)
  const middle = place(pegs.from) + (width - 1) / 2
  const half = Math.max(1, Math.floor(most / 2))
  const centre = width > half ? Math.round(middle) : Math.floor(middle / half) * half + half / 2
  const from = Math.max(0, Math.min(Math.round(centre - most / 2), all - most))
  return { from, to: Math.min(all, from + most) - 1 }
}
