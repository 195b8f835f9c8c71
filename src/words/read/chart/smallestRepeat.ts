import type { Chart, Row } from '../../../pattern/pattern'

/** By habit a flat piece has few edge stitches; more would be no repeat with edges (common practice). */
const mostEdge = 4

/**
 * The same chart in the fewest columns: those that repeat all along every row once, and the edge
 * columns before and after them. A chart that repeats nothing, or only one column, stays whole.
 */
export function withSmallestRepeat(chart: Chart): Chart {
  const { rows, columns } = chart
  if (chart.repeat || rows.some(({ run }) => run !== null)) return chart
  for (let width = 1; width * 2 <= columns; width++) {
    const edges = edgesFor(chart, width)
    if (!edges) continue
    if (width === 1) return chart
    const { before, after } = edges
    const cut = (row: Row): Row => ({
      ...row,
      cells: [...row.cells.slice(0, before + width), ...row.cells.slice(columns - after)],
    })
    return {
      ...chart,
      columns: before + width + after,
      repeat: { from: before, to: before + width - 1 },
      rows: rows.map(cut),
    }
  }
  return chart
}

function edgesFor(
  { rows, columns }: Chart,
  width: number,
): { before: number; after: number } | null {
  for (let sum = 0; sum <= 2 * mostEdge; sum++)
    for (let before = 0; before <= sum; before++) {
      const after = sum - before
      if (before > mostEdge || after > mostEdge) continue
      const middle = columns - before - after
      if (middle % width !== 0 || middle < 2 * width) continue
      if (rows.every((row) => repeats(row, before, columns - after, width)))
        return { before, after }
    }
  return null
}

function repeats({ cells }: Row, from: number, to: number, width: number): boolean {
  // No stitch may lie across the edge of the repeat.
  if (
    cells[from] === null ||
    cells[from + width] === null ||
    (to < cells.length && cells[to] === null)
  )
    return false
  for (let column = from; column + width < to; column++)
    if (cells[column] !== cells[column + width]) return false
  return true
}
