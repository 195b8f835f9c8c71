import { placed } from '../../pattern/row'
import type { Chart, Row } from '../../pattern/pattern'

const known = new WeakMap<readonly Row[], readonly number[]>()

/**
 * For the line before each chart column: how many columns a stitch that stands across it in some
 * row reaches back; 0 where the chart can be cut.
 */
export function reaches({ rows }: Pick<Chart, 'rows'>): readonly number[] {
  let list = known.get(rows)
  if (!list) known.set(rows, (list = measureReaches(rows)))
  return list
}

function measureReaches(rows: readonly Row[]): number[] {
  const reach: number[] = []
  for (const row of new Set(rows))
    for (const { column, columns } of placed(row))
      for (let offset = 1; offset < columns; offset++)
        reach[column + offset] = Math.max(reach[column + offset] ?? 0, offset)
  return reach
}
