import { languages } from '../languages/languages'
import type { Work } from '../pattern/work'
import { drawChart, sameRun, type ChartKind, type ChartScene } from './again'
import { flatGeometry, timesText, type FlatGeometry, type FlatOptions } from './flatGeometry'
import { findingItems, type FindingMark } from './marks'
import { arrowHead, polyline, rectangle, mm, type Point } from './path'
import type { Item, Layer } from './scene'
import { isNumbered, numberStep, textWidth, weights } from './sizes'
import { chartDrawn } from './titles'
import { filled, stroked, written } from './items'

export { flatGeometry, type FlatGeometry, type FlatOptions } from './flatGeometry'

export interface FlatChartOptions extends FlatOptions {
  readonly marks?: readonly FindingMark[]
}

export type FlatScene = ChartScene<FlatGeometry, FlatChartOptions>

/**
 * The flat chart: row 1 at the bottom, peg 1 on the side where it really is, as the right side is
 * seen. With the drawing of an earlier version only what changed is drawn; layers that an edit did
 * not touch are the same objects as before.
 */
export const flatChart = (
  work: Work,
  options: FlatChartOptions = {},
  previous?: FlatScene,
): FlatScene => drawChart(flat, work, options, previous)

const flat: ChartKind<FlatGeometry, FlatChartOptions> = {
  geometry: flatGeometry,
  same: (a, b) =>
    a.cell === b.cell &&
    a.leastText === b.leastText &&
    a.columns === b.columns &&
    sameRun(a.rows, b.rows) &&
    sameRun(a.slots, b.slots),
  title: (work) => languages[work.pattern.style.terms].drawings.rowChart(chartDrawn(work)),
  grid: gridLayer,
  boxes: boxLayer,
  numbers: numberLayer,
  findings: findingLayer,
}

const layer = (key: string, items: readonly Item[]): Layer => ({ key, x: 0, y: 0, items })

function gridLayer({ pattern }: Work, geometry: FlatGeometry): Layer {
  const { heavyEvery } = pattern.style
  const { slots, firstRow, lastRow, left, right, top, bottom, point } = geometry
  const lines = { grid: '', heavy: '' }
  const isHeavy = (index: number) => heavyEvery > 0 && index % heavyEvery === 0
  for (let u = 1; u < slots.count; u++) {
    const [x] = point(u, firstRow)
    lines[isHeavy(u + slots.first) ? 'heavy' : 'grid'] += mm`M${x} ${top}L${x} ${bottom}`
  }
  for (let v = firstRow + 1; v <= lastRow; v++) {
    const [, y] = point(0, v)
    lines[isHeavy(v) ? 'heavy' : 'grid'] += mm`M${left} ${y}L${right} ${y}`
  }
  const path = (d: string, ink: 'grid' | 'heavy'): Item[] =>
    d ? [stroked(d, ink, weights[ink])] : []
  return layer('grid', [...path(lines.grid, 'grid'), ...path(lines.heavy, 'heavy')])
}

/** Repeats, bands, start and direction. */
function boxLayer({ chart, layout }: Work, geometry: FlatGeometry): Layer {
  return layer('boxes', [
    frameItem(geometry),
    ...repeatItems(layout.copies, geometry),
    ...bandItems(chart.bands, geometry),
    ...startItems(geometry),
  ])
}

const frameItem = ({ left, top, right, bottom }: FlatGeometry): Item =>
  stroked(rectangle(left, top, right - left, bottom - top), 'frame', weights.frame)

function repeatItems(times: number, geometry: FlatGeometry): Item[] {
  const { slots, firstRow, lastRow, outline, point, bottom, text } = geometry
  if (slots.copies.length === 0) return []
  const d = slots.copies.map(({ from, to }) => outline(from, to, firstRow, lastRow)).join('')
  const box: Item = stroked(d, 'repeat', weights.box)
  const [copy] = slots.copies
  if (slots.kind === 'loom' || !copy) return [box]
  const [x0] = point(copy.from, firstRow)
  const [x1] = point(copy.to + 1, firstRow)
  const label: Item = written(
    timesText(times),
    [(x0 + x1) / 2, bottom + 3.3 * text],
    text,
    'middle',
    'repeat',
    'bold',
  )
  const [low, high] = [bottom + 1.8 * text, bottom + 2.15 * text]
  const bracket = mm`M${x0} ${low}L${x0} ${high}L${x1} ${high}L${x1} ${low}`
  return [box, stroked(bracket, 'repeat', weights.frame), label]
}

function bandItems(bands: Work['chart']['bands'], geometry: FlatGeometry): Item[] {
  const { slots, firstRow, lastRow, left, right, point, text, margin } = geometry
  const [edge, out] = slots.leftward ? [left, -1] : [right, 1]
  const x = edge + out * margin.band
  const shown = bands.filter(({ from, to }) => from <= lastRow && to >= firstRow)
  return shown.flatMap(({ from, to, times }): Item[] => {
    const [, low] = point(0, Math.max(from, firstRow))
    const [, high] = point(0, Math.min(to, lastRow) + 1)
    const [y0, y1] = [low - 0.3, high + 0.3]
    const bracket: Point[] = [
      [x - out * text * 0.35, y0],
      [x, y0],
      [x, y1],
      [x - out * text * 0.35, y1],
    ]
    return [
      stroked(polyline(bracket), 'band', weights.frame),
      written(
        timesText(times),
        [x + out * text * 0.4, (y0 + y1) / 2 + text * 0.35],
        text,
        out < 0 ? 'end' : 'start',
        'band',
        'bold',
      ),
    ]
  })
}

/** A solid arrow head at peg 1, row 1; an arrow below the chart, the way the first row runs. */
function startItems(geometry: FlatGeometry): Item[] {
  const { slots, firstRow, left, right, point, text, height } = geometry
  const [edge, along] = slots.leftward ? [right, -1] : [left, 1]
  const angle = (along * Math.PI) / 2
  const y = height - 1.6
  const tail = edge
  const tip = edge + along * Math.min(right - left, 8 * text)
  const head = arrowHead([tip, y], angle, text * 0.75)
  const items: Item[] = [
    stroked(mm`M${tail} ${y}L${tip - along * text * 0.5} ${y}`, 'note', weights.mark),
    filled(head, 'note'),
  ]
  if (firstRow > 0 || slots.first > 0) return items
  const [, low] = point(0, 0)
  const [, high] = point(0, 1)
  const start: Point = [edge - along * (1 + textWidth('1', text) + text * 0.4), (low + high) / 2]
  return [...items, filled(arrowHead(start, angle, text * 0.85), 'note')]
}

function numberLayer({ firstRuns, numbers }: Work, geometry: FlatGeometry): Layer {
  const { slots, firstRow, lastRow, left, right, bottom, point, text, smallest } = geometry
  const items: Item[] = []
  const rowStep = numberStep(smallest.height, text * 1.02)
  for (let row = firstRow; row <= lastRow; row++) {
    if (!isNumbered(row, rowStep)) continue
    const atRight = firstRuns[row]?.rightToLeft ?? false
    items.push(
      written(
        String(numbers[row] ?? row + 1),
        [atRight ? right + 1 : left - 1, point(0, row + 0.5)[1] + text * 0.35],
        text,
        atRight ? 'start' : 'end',
      ),
    )
  }
  const widest = textWidth(String(Math.max(...slots.pegOf) + 1), text)
  // Under a row or two a number for each peg would be more than the rows themselves.
  const isWideStrip = lastRow - firstRow < 2 && slots.count > 12
  const pegStep = Math.max(numberStep(smallest.width, widest + text * 0.2), isWideStrip ? 5 : 1)
  for (let slot = 0; slot < slots.count; slot++) {
    const peg = slots.pegOf[slot] ?? -1
    if (peg < 0 || !isNumbered(slot + slots.first, pegStep)) continue
    items.push(
      written(
        String(peg + 1),
        [point(slot + 0.5, firstRow)[0], bottom + text * 1.3],
        text,
        'middle',
      ),
    )
  }
  return layer('numbers', items)
}

function findingLayer(marks: readonly FindingMark[], geometry: FlatGeometry): Layer {
  const { slots, left, right, margin, point } = geometry
  const x = slots.leftward ? left - margin.finding : right + margin.finding
  const items = findingItems(marks, geometry, (row) => [x, point(0, row + 0.5)[1]])
  return layer('findings', items)
}
