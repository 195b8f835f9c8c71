import type { Row } from '../pattern/pattern'
import { changeOf } from '../pattern/changes'
import type { PatternRun, Work } from '../pattern/work'
import type { Geometry } from './geometry'
import type { Point } from './path'
import { rowItems, type RowView } from './rowItems'
import type { Item, Layer } from './scene'
import { signWeight } from './sizes'

/**
 * Rows as drawn: one layer a row, one path for each ink. What a row's layer holds is kept by the
 * row's identity, so an edit draws only the rows it changed.
 */
interface View extends RowView {
  /** Of the latest drawing; rows kept from earlier ones lie the same in it. */
  geometry: Geometry
  /** Rows by where they end; in a ring also by where they stand. */
  readonly rows: WeakMap<Row, Map<string, Drawn>>
  /** Flat charts: the rows that do not turn, which are most. */
  readonly plainRows: WeakMap<Row, Drawn>
}

interface Drawn {
  /** Of its layers. */
  readonly key: string
  readonly items: readonly Item[]
  /** The layers it has in the latest drawing: several where the same row stands several times. */
  layers: Layer[]
  /** Those it had in the drawing before that. */
  before: readonly Layer[]
  drawing: number
}

/** By what they are made of; the oldest is dropped when there are too many. */
const views = new Map<string, View>()
const viewsKept = 16

function viewOf({ pattern }: Work, geometry: Geometry): View {
  const { symbols, background } = pattern.style
  const { smallest, slots, kind } = geometry
  // In a flat chart a row looks the same wherever it stands, so it may move without being redrawn.
  const shape = kind === 'flat' ? `${slots.key} ${smallest.width}x${smallest.height}` : geometry.key
  const key = [kind, symbols, background, shape].join('|')
  let view = views.get(key)
  if (!view) {
    view = {
      geometry,
      tradition: symbols,
      background,
      weight: signWeight(Math.min(smallest.width, smallest.height)),
      pieces: new Map(),
      rows: new WeakMap(),
      plainRows: new WeakMap(),
    }
    for (const oldest of views.keys()) if (views.size >= viewsKept) views.delete(oldest)
    views.set(key, view)
  }
  view.geometry = geometry
  return view
}

const rowKeys = new WeakMap<Row, number>()
let rowsSeen = 0

function keyOf(row: Row): number {
  let key = rowKeys.get(row)
  if (key === undefined) rowKeys.set(row, (key = ++rowsSeen))
  return key
}

let drawings = 0

/**
 * The layers of all drawn rows, first row first. The same Layer objects for rows that did not
 * change or move; the same items for rows that only moved.
 */
export function rowLayers(work: Work, geometry: Geometry): Layer[] {
  const view = viewOf(work, geometry)
  const { rows } = work.pattern.chart
  const drawing = ++drawings
  const layers: Layer[] = []
  for (let index = geometry.firstRow; index <= geometry.lastRow; index++) {
    const run = work.firstRuns[index]
    const row = rows[index]
    if (run && row)
      layers.push(layerOf(drawRow(row, run, index, view), geometry.origin(index), drawing))
  }
  return layers
}

/**
 * Put the rows that changed since `before` into the layers of its drawing, of which the first is
 * the grid. Gives null where a changed row stands several times in the chart: then the keys of its
 * layers have to be told apart, and all rows must be drawn together.
 */
export function replaceRows(
  layers: Layer[],
  work: Work,
  before: Work,
  geometry: Geometry,
): { readonly sidesChanged: boolean } | null {
  const { firstRow, lastRow } = geometry
  const { rows } = work.pattern.chart
  const { from, to } = changeOf(work.firstRuns, before.firstRuns)
  let view: View | null = null
  let sidesChanged = false
  for (let index = Math.max(from, firstRow); index < to && index <= lastRow; index++) {
    const [run, old] = [work.firstRuns[index], before.firstRuns[index]]
    const row = rows[index]
    if (!run || !old || !row) return null
    if (run.rightToLeft !== old.rightToLeft) sidesChanged = true
    else if (row === before.pattern.chart.rows[index] && run.row === old.row) continue
    if (rows.indexOf(row) !== index || rows.lastIndexOf(row) !== index) return null
    if (!view) {
      view = viewOf(work, geometry)
      drawings++
    }
    const drawn = drawRow(row, run, index, view)
    layers[index - firstRow + 1] = layerOf(drawn, geometry.origin(index), drawings)
  }
  return { sidesChanged }
}

/** The layer that stood at the same place in the drawing before, or a new one. */
function layerOf(drawn: Drawn, [x, y]: Point, drawing: number): Layer {
  if (drawn.drawing !== drawing) {
    drawn.drawing = drawing
    const [only] = drawn.layers
    if (only && drawn.layers.length === 1 && only.x === x && only.y === y) return only
    drawn.before = drawn.layers
    drawn.layers = []
  }
  const layer = layerBefore(drawn, x, y) ?? { key: freeKey(drawn), x, y, items: drawn.items }
  drawn.layers.push(layer)
  return layer
}

function layerBefore({ before, layers }: Drawn, x: number, y: number): Layer | undefined {
  const hint = before[layers.length]
  const found =
    hint?.x === x && hint.y === y ? hint : before.find((layer) => layer.x === x && layer.y === y)
  return found && layers.every(({ key }) => key !== found.key) ? found : undefined
}

function freeKey({ key, layers }: Drawn): string {
  const taken = new Set(layers.map((layer) => layer.key))
  let free = key
  for (let copy = 1; taken.has(free); copy++) free = `${key}-${copy}`
  return free
}

function drawRow(row: Row, run: PatternRun, index: number, view: View): Drawn {
  const isRing = view.geometry.kind === 'ring'
  if (!isRing && row.end === 'on') {
    let drawn = view.plainRows.get(row)
    if (!drawn) view.plainRows.set(row, (drawn = newDrawn('', row, run, index, view)))
    return drawn
  }
  let ofRow = view.rows.get(row)
  if (!ofRow) view.rows.set(row, (ofRow = new Map<string, Drawn>()))
  const side = row.end === 'on' ? '' : run.rightToLeft ? 'l' : 'r'
  const place = isRing ? `-${index}${side}` : side
  let drawn = ofRow.get(place)
  if (!drawn) ofRow.set(place, (drawn = newDrawn(place, row, run, index, view)))
  return drawn
}

const newDrawn = (place: string, row: Row, run: PatternRun, index: number, view: View): Drawn => ({
  key: `row-${keyOf(row)}${place}`,
  items: rowItems(row, run, index, view),
  layers: [],
  before: [],
  drawing: 0,
})
