import { simulate, type Run } from '../loom/simulate'
import { castOn, type LoomState } from '../loom/state'
import { habitsOf } from './habits'
import { findChart, namedOn } from './charts'
import { layOut, type Layout } from './layout'
import type { NamedChart, Pattern, Sheet } from './pattern'
import { onPegs, type PatternRow, type PatternRun } from './row'
import { rowNumbers, schedule, type Pass } from './schedule'
import { workPiece, type PieceWork, type StepWork } from './workPiece'

export type { PatternRun } from './row'

/** A chart worked where it stands in the piece: the one run that all its readings are taken from. */
export interface Work extends NamedChart {
  readonly pattern: Pattern
  readonly layout: Layout
  /** One entry per working of a row; `run.rows` stands beside it, entry by entry. */
  readonly passes: readonly Pass[]
  readonly run: Run<PatternRow>
  /** First working of each chart row. */
  readonly firstRuns: readonly PatternRun[]
  /** Row numbers for people, one per chart row. */
  readonly numbers: readonly number[]
  /** The step in which it stands, from 0; null: no step works it, and it is worked on a full loom. */
  readonly step: number | null
  /** The piece up to that step. */
  readonly piece: PieceWork | null
}

/** The first step that works this chart, from 0; null without one. */
export function firstStepOf({ steps }: Pattern, chart: string): number | null {
  const index = steps.findIndex((step) => step.kind === 'chart' && step.chart === chart)
  return index < 0 ? null : index
}

/**
 * Work a chart (the first, where none is named) from the loops that the steps before it leave: in this
 * step (from 0) if it works that chart, else in the first that does. With the work of an earlier
 * version, only what the edit touches.
 */
export function workPattern(
  pattern: Sheet,
  previous?: Work,
  at = previous?.step ?? null,
  name = namedOn(pattern).name,
): Work {
  const named = findChart(pattern, name) ?? pattern.charts[0]
  const there = at === null ? undefined : pattern.steps[at]
  const isThere = there?.kind === 'chart' && there.chart === named.name
  const step = isThere ? at : firstStepOf(pattern, named.name)
  if (step === null) return alone(pattern, named, previous)
  const piece = workPiece(pattern, previous?.piece ?? undefined, step)
  return chartWork(piece, step) ?? alone(pattern, named)
}

const fullLooms = new Map<number, LoomState>()

function fullLoom(pegs: number): LoomState {
  let full = fullLooms.get(pegs)
  if (!full) fullLooms.set(pegs, (full = castOn(pegs)))
  return full
}

/** A chart that no step works, on a loom full of loops. */
function alone(pattern: Pattern, named: NamedChart, previous?: Work): Work {
  const { chart } = named
  const { pegs, shape } = pattern.loom
  const layout = layOut(chart, pegs, shape)
  const rows = schedule(chart).map(({ row }) => onPegs(chart.rows[row] ?? noCells, layout))
  const run = simulate(rows, fullLoom(pegs), habitsOf(pattern), previous?.run)
  return workOf(pattern, named, run, null, null)
}

const noCells = { cells: [], run: null, heading: null, end: 'on' } as const

function workOf(
  pattern: Pattern,
  named: NamedChart,
  run: Run<PatternRow>,
  step: number | null,
  piece: PieceWork | null,
): Work {
  const { chart } = named
  const { pegs, shape } = pattern.loom
  const layout = layOut(chart, pegs, shape)
  const passes = schedule(chart)
  const firstRuns =
    chart.bands.length === 0 ? run.rows : run.rows.filter((_, index) => passes[index]?.time === 0)
  const numbers = rowNumbers(chart)
  return { ...named, pattern, layout, passes, run, firstRuns, numbers, step, piece }
}

/** How often a step works a chart whole; 0 where it works none. */
const wholeTimes = ({ chart, rows }: StepWork): number =>
  chart && rows ? Math.floor(rows.rows.length / schedule(chart.chart).length) : 0

/** The chart's work in a step, at one of its times (from 0), with the loom as it is then; null: none. */
export function chartWork(piece: PieceWork, step: number, time = 0): Work | null {
  const work = piece.steps[step]
  const { pattern } = piece
  if (!work?.chart || !work.rows) return null
  const named = findChart(pattern, work.chart.name) ?? work.chart
  // What goes beyond the length of a piece is read as it stands by itself.
  if (wholeTimes(work) === 0) return alone(pattern, named)
  const { length } = schedule(named.chart)
  const run = timeOf(work.rows, time * length, length)
  return workOf(pattern, named, run, step, piece)
}

/** That at each of its times. */
export function chartWorks(piece: PieceWork, step: number): readonly Work[] {
  const work = piece.steps[step]
  const times = work ? Math.max(1, wholeTimes(work)) : 0
  return Array.from({ length: times }, (_, time) => chartWork(piece, step, time)).filter(
    (one) => one !== null,
  )
}

/** Rows `from`.. of a run, so many. The same run where these are all its rows. */
function timeOf(all: Run<PatternRow>, from: number, length: number): Run<PatternRow> {
  if (from === 0 && length === all.rows.length) return all
  const rows = all.rows.slice(from, from + length)
  return {
    ...all,
    given: all.given.slice(from, from + length),
    rows,
    start: rows[0]?.before ?? all.start,
    end: rows.at(-1)?.after ?? all.end,
  }
}
