import { runsRightToLeft } from '../loom/direction'
import { areaOf, facing, type Block, type Corner } from '../pattern/blocks/block'
import { within, type Area, type At } from '../pattern/blocks/area'
import { blankRow, type Run } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import type { Geometry } from './geometry'
import { mm } from './path'
import { rowItems } from './rowItems'
import { drawnRows } from './rows'
import type { Layer } from './scene'

/** Runs of slots in which columns `from`..`to` stand side by side: one, or one for each copy of the repeat. */
export function slotRuns({ slots }: Geometry, { from, to }: Run): readonly Run[] {
  const runs: { from: number; to: number }[] = []
  slots.columnOf.forEach((column, slot) => {
    if (column < from || column > to) return
    const last = runs.at(-1)
    const goesOn = last?.to === slot - 1 && slots.columnOf[slot - 1] === column - 1
    if (goesOn) last.to = slot
    else runs.push({ from: slot, to: slot })
  })
  return runs
}

/** Path round the cells of an area, wherever they are drawn; empty where they are not. */
export const areaOutline = (geometry: Geometry, { rows, columns }: Area): string => {
  const [low, high] = [Math.max(rows.from, geometry.firstRow), Math.min(rows.to, geometry.lastRow)]
  if (low > high) return ''
  return slotRuns(geometry, columns)
    .map(({ from, to }) => geometry.outline(from, to, low, high))
    .join('')
}

/** Path round a stitch. */
export const outlineOf = (geometry: Geometry, { row, column, columns }: At): string =>
  areaOutline(geometry, {
    rows: { from: row, to: row },
    columns: { from: column, to: column + columns - 1 },
  })

/** Teeth along the edges of an area where they go through a stitch. */
export function tearIn(geometry: Geometry, item: At, { columns }: Area): string {
  const { slots, point } = geometry
  const teeth = 6
  let d = ''
  for (const edge of [columns.from, columns.to + 1]) {
    if (edge <= item.column || edge >= item.column + item.columns) continue
    slots.columnOf.forEach((column, slot) => {
      if (column !== edge) return
      for (let tooth = 0; tooth <= teeth; tooth++) {
        const [x, y] = point(slot + (tooth % 2 === 0 ? 0 : 0.22), item.row + tooth / teeth)
        d += tooth === 0 ? mm`M${x} ${y}` : mm`L${x} ${y}`
      }
    })
  }
  return d
}

/** The signs of a block as they would stand in the chart; its ground is left blank. */
export function blockLayers(
  work: Work,
  geometry: Geometry,
  block: Block,
  at: Corner,
): readonly Layer[] {
  const { pattern, chart, firstRuns } = work
  const view = drawnRows(work, geometry)
  const { rows, columns } = within(areaOf(block, at), chart)
  const blank = blankRow(chart.columns, pattern.style.background)
  return facing(block, runsRightToLeft(pattern.loom.direction)).rows.flatMap(
    (cells, index): Layer[] => {
      const row = at.row + index
      const run = firstRuns[row]
      if (!run || row < rows.from || row > rows.to) return []
      const part = cells.slice(columns.from - at.column, columns.to - at.column + 1)
      const laid = { ...blank, cells: blank.cells.toSpliced(columns.from, part.length, ...part) }
      const [x, y] = geometry.origin(row)
      return [{ key: `block-${row}`, x, y, items: rowItems(laid, run, row, view) }]
    },
  )
}
