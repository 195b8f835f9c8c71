import type { Row } from '../pattern/pattern'
import { placed, type Placed } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import { mirrorSign, signInks, type Sign, type Tradition } from '../stitches/sign'
import { signOf } from '../stitches/signs/signOf'
import type { Stitch } from '../stitches/stitch'
import { cutSign, type SignPart } from './cutSign'
import type { Geometry } from './geometry'
import { closed, type Point } from './path'
import { filled, ifAny, stroked } from './items'
import type { Item } from './scene'
import { proportioned, signPaths, type InkPaths, type Setting } from './signPath'
import { crossGround, crossSetting, type RingRow } from './ringCross'
import { signItems } from './signItems'
import { signWeights, weights } from './sizes'
import type { Slots } from './slots'
import { turnSigns } from './turnSigns'

/** How rows are drawn. */
export interface RowView {
  readonly geometry: Geometry
  readonly tradition: Tradition
  /** Left blank in the chart. */
  readonly background: Stitch
  /** The shorter side of the smallest cell, mm. */
  readonly side: number
  /** Flat charts: a stitch looks the same in every row, so its pieces are kept by slot. */
  readonly pieces: Map<Stitch, (InkPaths | undefined)[]>
}

/**
 * A ring that is one path reaches over the whole drawing, and a screen that shows a part of it
 * would go through all of it: rings are cut into sectors of so many slots.
 */
export const slotsInSector = 12

/** All that a row's layer holds, relative to its origin: one path for each ink (and sector). */
export function rowItems(row: Row, run: PatternRun, index: number, view: RowView): Item[] {
  const { side, geometry } = view
  const size = geometry.kind === 'ring' ? slotsInSector : Infinity
  const sectors: InkPaths[] = []
  const add = (paths: InkPaths, slot: number) => {
    const sector = (sectors[Math.floor(slot / size)] ??= {})
    for (const ink of signInks) {
      const path = paths[ink]
      if (path !== undefined) sector[ink] = (sector[ink] ?? '') + path
    }
  }
  const unworked = drawStitches(row, index, view, add)
  const turn = turnPath(row, run, index, view)
  return [
    ...ifAny(unworked, (d) => filled(d, 'unworked')),
    ...sectors.flatMap((paths) => signItems(paths, side)),
    ...ifAny(turn.line, (d) => stroked(d, 'note', Math.min(signWeights(side).line, weights.mark))),
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
  const put = (item: Placed, offset: number, slot: number, columns: number) => {
    if (item.stitch !== view.background)
      add(stitchPaths({ item, offset, slot, columns }, index, view), slot)
  }
  if (slots.kind === 'chart' && !row.run && row.cells.length >= slots.first + slots.count) {
    // Each column once and all of them worked, as nearly always: no need to go slot by slot.
    for (const item of items) {
      const first = item.column - slots.first
      const end = Math.min(slots.count, first + item.columns)
      for (let from = Math.max(0, first); from < end;) {
        const to = nextCut(slots, from, end)
        put(item, from - first, from, to - from)
        from = to
      }
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
    end = nextCut(slots, slot, end)
    put(item, column - item.column, slot, end - slot)
    slot = end
  }
  return unworked
}

/** Where a stitch on slots `from`..`end` is cut first; its end if it is not. */
function nextCut({ cutBefore }: Slots, from: number, end: number): number {
  let next = end
  for (const slot of cutBefore) if (slot > from && slot < next) next = slot
  return next
}

function cells(slot: number, columns: number, row: number, view: RowView): string {
  const { place } = settingFor(slot, columns, row, view.geometry)
  if (view.geometry.kind === 'flat')
    return closed([place(0, 0), place(columns, 0), place(columns, 1), place(0, 1)])
  const rim: Point[] = []
  const steps = Math.max(2, columns * 4)
  for (let step = 0; step <= steps; step++) rim.push(place((step * columns) / steps, 0))
  for (let step = steps; step >= 0; step--) rim.push(place((step * columns) / steps, 1))
  return closed(rim)
}

/** Some neighbouring columns of a stitch, from its own column `offset` on, on as many slots. */
interface StitchColumns {
  readonly item: Placed
  readonly offset: number
  readonly slot: number
  readonly columns: number
}

function stitchPaths(piece: StitchColumns, row: number, view: RowView): InkPaths {
  const { item, slot, columns } = piece
  const { stitch } = item
  if (columns < stitch.width) return drawPiece(piece, row, view)
  if (view.geometry.kind === 'ring') return drawWhole(stitch, slot, row, view)
  let ofStitch = view.pieces.get(stitch)
  if (!ofStitch) view.pieces.set(stitch, (ofStitch = []))
  return (ofStitch[slot] ??= drawWhole(stitch, slot, row, view))
}

function drawWhole(stitch: Stitch, slot: number, row: number, view: RowView): InkPaths {
  const { geometry } = view
  const cell = geometry.cellOf(row)
  if (stitch.cross && geometry.kind === 'ring') {
    const ringRow = ringRowOf(row, geometry)
    const { setting, ratio } = crossSetting(slot, stitch.width, ringRow)
    const paths = signPaths(signOf(stitch, view.tradition, ratio), setting)
    return { ...paths, ground: crossGround(slot, stitch.width, ringRow) + (paths.ground ?? '') }
  }
  const sign = signOf(stitch, view.tradition, cell.height / cell.width)
  return drawSign(sign, stitch, settingFor(slot, stitch.width, row, geometry), cell)
}

function ringRowOf(row: number, { slots, point, origin, cellOf }: Geometry): RingRow {
  const [x, y] = origin(row)
  const fromMiddle = (u: number, v: number): Point => {
    const [pageX, pageY] = point(u, v)
    return [pageX - x, pageY - y]
  }
  return { slots, point: fromMiddle, row, cell: cellOf(row) }
}

/** What is left of a sign: torn where a neighbour or an edge cuts it, not where the drawing ends. */
function drawPiece(
  { item, offset, slot, columns }: StitchColumns,
  row: number,
  view: RowView,
): InkPaths {
  const { stitch } = item
  const { slots } = view.geometry
  const atEnd = slot + columns === slots.count && offset + columns < item.columns
  const low = offset > 0 && slot > 0
  const high = offset + columns < stitch.width && !atEnd
  const part: SignPart = slots.leftward
    ? {
        from: stitch.width - offset - columns,
        to: stitch.width - offset,
        torn: { left: high, right: low },
      }
    : { from: offset, to: offset + columns, torn: { left: low, right: high } }
  const setting = settingFor(slot, columns, row, view.geometry)
  const { width, height } = view.geometry.cellOf(row)
  return signPaths(cutSign(signOf(stitch, view.tradition, height / width), part), setting)
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

/** How a sign drawn in `columns` columns lies on as many slots of a row, relative to its layer. */
function settingFor(slot: number, columns: number, row: number, geometry: Geometry): Setting {
  const { slots, kind } = geometry
  const cell = geometry.cellOf(row)
  const unit = Math.min(cell.width, cell.height)
  if (kind === 'flat') {
    const left = (slots.leftward ? slots.count - slot - columns : slot) * cell.width
    return { place: (x, y) => [left + x * cell.width, y * cell.height], unit, straight: 0 }
  }
  const { point } = ringRowOf(row, geometry)
  const place = (x: number, y: number): Point =>
    point(slots.leftward ? slot + columns - x : slot + x, row + 1 - y)
  // Straight lines are bent where they would leave the ring by more than a hair.
  const straight = Math.max(0.04, (0.05 * slots.count) / (2 * Math.PI))
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
  const setting = settingFor(slot, 1, index, view.geometry)
  return signPaths(
    run.rightToLeft ? mirrorSign(sign, 1) : sign,
    proportioned(setting, run.rightToLeft ? 1 : 0, view.geometry.cellOf(index)),
  )
}
