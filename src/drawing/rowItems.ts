import type { Row } from '../pattern/pattern'
import { placed } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import { mirrorSign, type Sign, type Tradition } from '../stitches/sign'
import type { Stitch } from '../stitches/stitch'
import type { Geometry } from './geometry'
import { closed, type Point } from './path'
import type { Item } from './scene'
import { proportioned, signPaths, type InkPaths, type Setting } from './signPath'
import { weights } from './sizes'
import { turnSigns } from './turnSigns'

/** How rows are drawn. */
export interface RowView {
  readonly geometry: Geometry
  readonly tradition: Tradition
  /** Left blank in the chart. */
  readonly background: string
  /** Stroke width of signs. */
  readonly weight: number
  /** Flat charts: a stitch looks the same in every row, so its pieces are kept by slot. */
  readonly pieces: Map<Stitch, (InkPaths | undefined)[]>
}

interface Inks {
  line: string
  solid: string
  ground: string
  shade: string
}

/**
 * A ring that is one path reaches over the whole drawing, and a screen that shows a part of it
 * would go through all of it: rings are cut into sectors of so many slots.
 */
export const slotsInSector = 12

/** All that a row's layer holds, relative to its origin: one path for each ink (and sector). */
export function rowItems(row: Row, run: PatternRun, index: number, view: RowView): Item[] {
  const { weight, geometry } = view
  const size = geometry.kind === 'ring' ? slotsInSector : Infinity
  const sectors: Inks[] = []
  const add = (paths: InkPaths, slot: number) => {
    const inks = (sectors[Math.floor(slot / size)] ??= {
      line: '',
      solid: '',
      ground: '',
      shade: '',
    })
    if (paths.line) inks.line += paths.line
    if (paths.solid) inks.solid += paths.solid
    if (paths.ground) inks.ground += paths.ground
    if (paths.shade) inks.shade += paths.shade
  }
  const unworked = drawStitches(row, index, view, add)
  const turn = turnPath(row, run, index, view)
  const path = (d: string, ink: Item['ink'], stroke: number, fill: boolean): Item[] =>
    d === '' ? [] : [{ kind: 'path', d, ink, stroke, fill }]
  return [
    ...path(unworked, 'unworked', 0, true),
    ...sectors.flatMap((inks) => [
      ...path(inks.shade, 'shade', 0, true),
      ...path(inks.shade, 'grid', weights.grid, false),
      ...path(inks.ground, 'ground', 0, true),
      ...path(inks.line, 'line', weight, false),
      ...path(inks.solid, 'solid', 0, true),
    ]),
    ...path(turn.line ?? '', 'note', Math.min(weight, weights.mark), false),
  ]
}

/** Hands every stitch's paths to `add`; gives the path of the cells that the row does not work. */
function drawStitches(
  row: Row,
  index: number,
  view: RowView,
  add: (paths: InkPaths, slot: number) => void,
): string {
  const { slots } = view.geometry
  const items = placed(row)
  if (slots.kind === 'chart' && !row.run && row.cells.length >= slots.first + slots.count) {
    // Each column once and all of them worked, as nearly always: no need to go slot by slot.
    for (const { stitch, column, columns } of items) {
      const from = Math.max(0, column - slots.first)
      const end = Math.min(slots.count, column - slots.first + columns)
      if (from < end && stitch.id !== view.background)
        add(stitchPaths(stitch, from, end - from, index, view), from)
    }
    return ''
  }
  const covers = slots.covers(row)
  const itemOf = new Array<(typeof items)[number]>(row.cells.length)
  for (const item of items)
    for (let offset = 0; offset < item.columns; offset++) itemOf[item.column + offset] = item
  let unworked = ''
  for (let slot = 0; slot < slots.count;) {
    const column = slots.columnOf[slot] ?? -1
    const item = itemOf[column]
    let end = slot + 1
    if (!item || !covers(slot)) {
      while (end < slots.count && !(itemOf[slots.columnOf[end] ?? -1] && covers(end))) end++
      unworked += cells(slot, end - slot, index, view)
      slot = end
      continue
    }
    while (
      end < slots.count &&
      slots.columnOf[end] === column + end - slot &&
      itemOf[column + end - slot] === item &&
      covers(end)
    )
      end++
    if (item.stitch.id !== view.background)
      add(stitchPaths(item.stitch, slot, end - slot, index, view), slot)
    slot = end
  }
  return unworked
}

function cells(slot: number, columns: number, row: number, view: RowView): string {
  const { place } = settingFor(slot, columns, columns, row, view.geometry)
  if (view.geometry.kind === 'flat')
    return closed([place(0, 0), place(columns, 0), place(columns, 1), place(0, 1)])
  const rim: Point[] = []
  const steps = Math.max(2, columns * 4)
  for (let step = 0; step <= steps; step++) rim.push(place((step * columns) / steps, 0))
  for (let step = steps; step >= 0; step--) rim.push(place((step * columns) / steps, 1))
  return closed(rim)
}

/** The sign of a stitch on `columns` slots; narrower than drawn where a neighbour cuts it. */
function stitchPaths(
  stitch: Stitch,
  slot: number,
  columns: number,
  row: number,
  view: RowView,
): InkPaths {
  if (view.geometry.kind === 'ring') return makePaths(stitch, slot, columns, row, view)
  let ofStitch = view.pieces.get(stitch)
  if (!ofStitch) view.pieces.set(stitch, (ofStitch = []))
  return (ofStitch[slot * 9 + columns] ??= makePaths(stitch, slot, columns, row, view))
}

function makePaths(
  stitch: Stitch,
  slot: number,
  columns: number,
  row: number,
  view: RowView,
): InkPaths {
  const setting = settingFor(slot, columns, stitch.width, row, view.geometry)
  return drawSign(stitch.signs[view.tradition], stitch, setting, view.geometry.cellOf(row))
}

/** Signs of one or two columns keep their proportions; crosses and shades fill their cells. */
export function drawSign(
  sign: Sign,
  { width, cross }: Stitch,
  setting: Setting,
  cell: { readonly width: number; readonly height: number },
): InkPaths {
  const fills = cross !== undefined || sign.some(({ ink }) => ink === 'shade')
  return signPaths(sign, fills ? setting : proportioned(setting, width / 2, cell))
}

/** How a sign drawn in `width` columns lies on `columns` slots of a row, relative to its layer. */
function settingFor(
  slot: number,
  columns: number,
  width: number,
  row: number,
  geometry: Geometry,
): Setting {
  const { slots, point, origin, kind } = geometry
  const cell = geometry.cellOf(row)
  const unit = Math.min((cell.width * columns) / width, cell.height)
  if (kind === 'flat') {
    const left = (slots.leftward ? slots.count - slot - columns : slot) * cell.width
    const across = (cell.width * columns) / width
    return { place: (x, y) => [left + x * across, y * cell.height], unit, straight: 0 }
  }
  const [originX, originY] = origin(row)
  const scale = columns / width
  const place = (x: number, y: number): Point => {
    const u = slots.leftward ? slot + columns - x * scale : slot + x * scale
    const [pageX, pageY] = point(u, row + 1 - y)
    return [pageX - originX, pageY - originY]
  }
  // Straight lines are bent where they would leave the ring by more than a hair.
  const straight = Math.max(0.04, (0.05 * slots.count) / (2 * Math.PI) / scale)
  return { place, unit, straight }
}

/** The mark of a turn: in the row's last cell, or for a wrap in the cell beyond it. */
function turnPath(row: Row, run: PatternRun, index: number, view: RowView): InkPaths {
  if (row.end === 'on') return {}
  const { slots } = view.geometry
  const forward = run.rightToLeft === slots.leftward
  const last = slots.slotOf(forward ? run.row.to : run.row.from)
  if (last === undefined) return {}
  const sign = turnSigns[row.end]
  const slot = row.end === 'German turn' ? last : forward ? last + 1 : last - 1
  const setting = settingFor(slot, 1, 1, index, view.geometry)
  return signPaths(
    run.rightToLeft ? mirrorSign(sign, 1) : sign,
    proportioned(setting, run.rightToLeft ? 1 : 0, view.geometry.cellOf(index)),
  )
}
