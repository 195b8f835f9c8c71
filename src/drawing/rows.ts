import { changeOf } from '../pattern/changes'
import type { Layout } from '../pattern/layout'
import { memo } from '../pattern/memo'
import type { Row } from '../pattern/pattern'
import type { PatternRun, Work } from '../pattern/work'
import type { Geometry } from './geometry'
import { rowItems, type RowView } from './rowItems'
import type { Item, Layer } from './scene'

/**
 * Rows as drawn: one layer a row, one path for each ink. What a row's layer holds is kept by the
 * row's identity, so the next drawing draws only the rows that an edit changed.
 */
export interface DrawnRows extends RowView {
  readonly layout: Layout
  /** By the row, and in a ring by where it stands; a row that turns also by the side it comes from. */
  readonly drawn: WeakMap<Row, Map<string, readonly Item[]>>
}

/** What the rows of a work are drawn in: with those drawn before where they still lie the same. */
export function drawnRows(
  { pattern, layout }: Work,
  geometry: Geometry,
  previous?: DrawnRows,
): DrawnRows {
  const { symbols: tradition, background } = pattern.style
  const stays =
    previous?.tradition === tradition &&
    previous.background === background &&
    previous.layout === layout &&
    liesTheSame(previous.geometry, geometry)
  if (stays) return { ...previous, geometry }
  const { width, height } = geometry.smallest
  const side = Math.min(width, height)
  const pieces: DrawnRows['pieces'] = new Map()
  return { geometry, tradition, background, side, pieces, layout, drawn: new WeakMap() }
}

/** In a flat chart a row looks the same wherever it stands, so it may move without being redrawn. */
function liesTheSame(a: Geometry, b: Geometry): boolean {
  const [old, now] = [a.slots, b.slots]
  if (a.kind === 'ring' || b.kind === 'ring') return a.key === b.key
  return (
    old.kind === now.kind &&
    old.leftward === now.leftward &&
    old.first === now.first &&
    old.count === now.count &&
    a.smallest.width === b.smallest.width &&
    a.smallest.height === b.smallest.height
  )
}

let rowsSeen = 0
const numberOf = memo((_row: Row): number => ++rowsSeen)

/** The layers of all drawn rows, first row first; the same items for rows that only moved. */
export function rowLayers(work: Work, view: DrawnRows): Layer[] {
  const { firstRow, lastRow } = view.geometry
  const taken = new Map<string, number>()
  return work.firstRuns.slice(firstRow, lastRow + 1).flatMap((run, offset): Layer[] => {
    const index = firstRow + offset
    const row = work.chart.rows[index]
    if (!row) return []
    const layer = rowLayer(row, run, index, view)
    const copy = taken.get(layer.key) ?? 0
    taken.set(layer.key, copy + 1)
    return [copy === 0 ? layer : { ...layer, key: `${layer.key}-${copy}` }]
  })
}

/**
 * Put the rows that changed since `before` into the layers of its drawing, of which the first is the grid.
 * Tells whether a row is now worked from the other side, where its number stands.
 */
export function replaceRows(layers: Layer[], work: Work, before: Work, view: DrawnRows): boolean {
  const { firstRow, lastRow } = view.geometry
  const { rows } = work.chart
  const { from, to } = changeOf(work.firstRuns, before.firstRuns)
  let sidesChanged = false
  for (let index = Math.max(from, firstRow); index < to && index <= lastRow; index++) {
    const [run, old] = [work.firstRuns[index], before.firstRuns[index]]
    const row = rows[index]
    if (!run || !old || !row) continue
    if (run.rightToLeft !== old.rightToLeft) sidesChanged = true
    else if (row === before.chart.rows[index] && run.row === old.row) continue
    const layer = rowLayer(row, run, index, view)
    const isAlone = rows.indexOf(row) === index && rows.lastIndexOf(row) === index
    const key = isAlone ? layer.key : freeKey(layer.key, layers)
    layers[index - firstRow + 1] = { ...layer, key }
  }
  return sidesChanged
}

/** A row that stands several times has a layer in each place. */
function freeKey(key: string, layers: readonly Layer[]): string {
  const taken = new Set(layers.map((layer) => layer.key))
  for (let copy = 0; ; copy++) {
    const free = copy === 0 ? key : `${key}-${copy}`
    if (!taken.has(free)) return free
  }
}

function rowLayer(row: Row, run: PatternRun, index: number, view: DrawnRows): Layer {
  const { kind, origin } = view.geometry
  const side = row.end === 'on' ? '' : run.rightToLeft ? 'l' : 'r'
  const place = kind === 'ring' ? `-${index}${side}` : side
  let ofRow = view.drawn.get(row)
  if (!ofRow) view.drawn.set(row, (ofRow = new Map<string, readonly Item[]>()))
  let items = ofRow.get(place)
  if (!items) ofRow.set(place, (items = rowItems(row, run, index, view)))
  const [x, y] = origin(index)
  return { key: `row-${numberOf(row)}${place}`, x, y, items }
}
