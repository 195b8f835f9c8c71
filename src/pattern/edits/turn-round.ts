import type { Pattern } from '../pattern'
import { mendOrphans } from './columns'
import { withCells, withChart } from './chart'
import { withAllCharts } from './piece'
import { reverseRun, turnOver } from './turn-over'

/**
 * Start the round elsewhere: column `by` becomes the first one of the run of columns that goes
 * round (the repeat, or the whole chart without one). Stitches stay whole unless the new edge of
 * that run goes through them.
 */
export function rotateColumns(pattern: Pattern, by: number): Pattern {
  const { columns, repeat, rows } = pattern.chart
  const { from, to } = repeat ?? { from: 0, to: columns - 1 }
  const width = to - from + 1
  const offset = ((by % width) + width) % width
  if (offset === 0) return pattern
  return withChart(pattern, {
    rows: withCells(rows, (cells) => {
      const round = cells.slice(from, to + 1)
      const turned = [...round.slice(offset), ...round.slice(0, offset)]
      return mendOrphans(
        [...cells.slice(0, from), ...turned, ...cells.slice(to + 1)],
        pattern.style.background,
      )
    }),
  })
}

/**
 * Work the loom the other way round and keep the look of the fabric, in every section: peg 1
 * changes sides, so columns and pegs are renumbered; crosses and leans stay as they look. A heel is
 * begun from the other end of the round. Moves and words follow.
 */
export function reverseDirection(pattern: Pattern): Pattern {
  const { loom } = pattern
  const direction = loom.direction === 'clockwise' ? 'counterclockwise' : 'clockwise'
  const turned = withAllCharts(pattern, (chart) => turnOver(chart, loom))
  return withStepPegs({ ...turned, loom: { ...loom, direction } }, loom.pegs)
}

/** Pegs named by steps, counted from the other end. */
export const withStepPegs = (pattern: Pattern, pegs: number): Pattern => ({
  ...pattern,
  piece: {
    ...pattern.piece,
    steps: pattern.piece.steps.map((step) => {
      if (step.kind === 'pegs')
        return step.run ? { ...step, run: reverseRun(step.run, pegs) } : step
      if (step.kind !== 'cast on' && step.kind !== 'bind off') return step
      return step.pegs ? { ...step, pegs: reverseRun(step.pegs, pegs) } : step
    }),
  },
})
