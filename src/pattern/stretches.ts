import { bindOffPegs, castOnPegs, type EdgeRun } from '../loom/edges'
import { firstMoment, momentsFrom, walkRow, type Moment } from '../loom/walk'
import type { Habits } from '../loom/work'
import type { Step } from './piece'
import { schedule } from './schedule'
import { unitOfRow } from './unit'
import type { PatternRun, Work } from './work'
import { edgePegs, type PieceWork, type StepWork } from './workPiece'

/** A chart row that is worked, 0-based, and in which chart it stands. */
export interface RowPlace {
  readonly chart: string
  readonly row: number
}

/** What is walked move by move in one go: a row, or an edge. */
export type Stretch = StretchPlace &
  (
    | { readonly kind: 'row'; readonly run: PatternRun; readonly chart: RowPlace | null }
    | {
        readonly kind: 'edge'
        readonly run: EdgeRun
        readonly edge: Extract<Step, { kind: 'cast on' | 'bind off' }>
        readonly chart: null
      }
  )

interface StretchPlace {
  /** Index of its step in the piece; null where a chart is walked by itself. */
  readonly step: number | null
  /** For people, from 1: which row of its chart as worked once, or of its plain rows. */
  readonly number: number
  /** Which time its chart is worked, from 0, and how often in all. */
  readonly time: number
  readonly times: number
  /** A whole round of a ring. */
  readonly isRound: boolean
}

/** The rows of the chart, one for each time a row is worked. */
export const chartStretches = ({ pattern, name, passes, run }: Work): readonly Stretch[] =>
  run.rows.map((rowRun, index) => ({
    kind: 'row',
    run: rowRun,
    chart: { chart: name, row: passes[index]?.row ?? 0 },
    step: null,
    number: passes[index]?.number ?? index + 1,
    time: 0,
    times: 1,
    isRound: unitOfRow(rowRun, pattern.loom.shape) === 'round',
  }))

/** All rows and edges of the whole piece, in the order they are worked. */
export const pieceStretches = ({ steps, pattern }: PieceWork): readonly Stretch[] =>
  steps.flatMap((work, step) => stretchesOf(work, step, pattern.loom.shape))

function stretchesOf(work: StepWork, index: number, shape: Habits['shape']): readonly Stretch[] {
  const { step, edge, rows, chart, toAndFro } = work
  const place = { step: index, time: 0, times: 1 }
  if (edge && (step.kind === 'cast on' || step.kind === 'bind off'))
    return [
      { ...place, kind: 'edge', run: edge, edge: step, chart: null, number: 1, isRound: false },
    ]
  const passes = chart ? schedule(chart.chart) : null
  const once = passes?.length ?? 0
  return (rows?.rows ?? []).map((run, row) => ({
    kind: 'row' as const,
    run,
    chart: chart && passes ? { chart: chart.name, row: passes[row % once]?.row ?? 0 } : null,
    step: index,
    number: passes ? (row % once) + 1 : row + 1,
    time: passes ? Math.floor(row / once) : 0,
    times: step.kind === 'chart' ? step.times : 1,
    isRound: !toAndFro && unitOfRow(run, shape) === 'round',
  }))
}

/** The loom before the stretch, then after each of its moves. */
export function momentsOf(stretch: Stretch, habits: Habits): readonly Moment[] {
  if (stretch.kind === 'row') return walkRow(stretch.run, habits)
  const { before, habits: way } = stretch.run
  const { edge } = stretch
  const { moments, record } = momentsFrom(firstMoment(before))
  const { from, to } = edgePegs(edge, before)
  if (edge.kind === 'cast on') castOnPegs(before, way, edge.how, from, to, record)
  else bindOffPegs(before, way, edge.how, from, to, stretch.run.fold, record)
  return moments
}
