import { opposite, type Heading } from '../../loom/direction'
import { stitchOf } from '../../stitches/vocabulary'
import type { Pattern, Row, Run } from '../pattern'
import { headingsOf } from '../headings'
import { mendOrphans } from './columns'
import { withCells, withChart } from './chart'

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

/** Cells in the opposite order; a stitch of several columns keeps its id in its lowest one. */
export function reverseCells(
  cells: readonly string[],
  rename: (id: string) => string = (id) => id,
): string[] {
  const reversed: string[] = []
  let tail: string[] = []
  for (let column = cells.length - 1; column >= 0; column--) {
    const cell = cells[column] as string
    if (cell === '') tail.push('')
    else {
      reversed.push(rename(cell), ...tail)
      tail = []
    }
  }
  return [...reversed, ...tail]
}

const reverseRun = (run: Run | null, count: number): Run | null =>
  run && { from: count - 1 - run.to, to: count - 1 - run.from }

const reverseColumns = (
  pattern: Pattern,
  rename: (id: string) => string,
  heading: (row: Row, index: number) => Heading | null,
): Pattern => {
  const { columns, repeat, rows } = pattern.chart
  return withChart(pattern, {
    repeat: reverseRun(repeat, columns),
    rows: rows.map((row, index) => ({
      ...row,
      cells: reverseCells(row.cells, rename),
      run: reverseRun(row.run, pattern.loom.pegs),
      heading: heading(row, index),
    })),
  })
}

/**
 * Work the loom the other way round and keep the look of the fabric: peg 1 changes sides, so
 * columns are renumbered; crosses and leans stay as they look. Moves and words follow.
 */
export function reverseDirection(pattern: Pattern): Pattern {
  const { loom } = pattern
  const direction = loom.direction === 'clockwise' ? 'counterclockwise' : 'clockwise'
  return reverseColumns(
    { ...pattern, loom: { ...loom, direction } },
    (id) => id,
    (row) => row.heading,
  )
}

/**
 * Mirror the design, for the second of a pair: crosses and leans swap, columns reverse, the loom
 * goes on being worked the same way. Rows of a part of the pegs head the other way; whole rounds
 * keep their heading.
 */
export function mirror(pattern: Pattern): Pattern {
  const headings = headingsOf(pattern)
  const flips = (row: Row) => row.run !== null || row.end !== 'on'
  const anyFlip = pattern.loom.shape === 'ring' && pattern.chart.rows.some(flips)
  return reverseColumns(
    pattern,
    (id) => stitchOf(id).mirror,
    (row, index) => {
      if (!anyFlip) return row.heading
      const now = headings[index] ?? 'forward'
      return flips(row) ? opposite(now) : now
    },
  )
}
