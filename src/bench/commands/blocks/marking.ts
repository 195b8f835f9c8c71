import { allOf } from '../../../pattern/blocks/area'
import type { Spot } from '../../../pattern/history'
import type { Bench } from '../../state/bench.svelte'
import { rowNoun } from '../../../words/rowName'
import type { Command } from '../command'
import { markArea } from './laying'

/** Mark whole rows, from this one to the other. */
export function markRows(bench: Bench, row: number, other = row): void {
  const { columns } = allOf(bench.chart)
  markArea(bench, { rows: { from: Math.min(row, other), to: Math.max(row, other) }, columns })
}

/** Mark whole columns: those of these pegs. */
export function markPegs(bench: Bench, peg: number, other = peg): void {
  const last = bench.chart.rows.length - 1
  const at = (row: number, on: number): Spot => ({ row, peg: on })
  bench.goTo(at(0, peg), at(last, other))
}

export const markRowCommand: Command = {
  id: 'mark-row',
  label: ({ pattern }) => `Mark this ${rowNoun(pattern)}`,
  keys: ['Shift+Space'],
  run: (bench) => markRows(bench, bench.spot.row, bench.corner?.row),
}
export const markPegCommand: Command = {
  id: 'mark-peg',
  label: 'Mark this peg',
  keys: ['Mod+Space'],
  run: (bench) => markPegs(bench, bench.spot.peg, bench.corner?.peg),
}
export const markChartCommand: Command = {
  id: 'mark-chart',
  label: 'Mark the chart',
  keys: ['Mod+a'],
  run: (bench) => markArea(bench, allOf(bench.chart)),
}
