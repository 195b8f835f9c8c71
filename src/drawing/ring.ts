import { languages } from '../languages/languages'
import { lineRadial } from 'd3-shape'
import type { Work } from '../pattern/work'
import { drawChart, type ChartKind, type ChartScene } from './again'
import { timesText } from './flatGeometry'
import { findingItems, type FindingMark } from './marks'
import { arcs, arrowHead, polyline, type Point } from './path'
import { ringGeometry, type RingGeometry, type RingOptions } from './ringGeometry'
import type { Item, Layer } from './scene'
import { slotsInSector } from './rowItems'
import { isNumbered, numberStep, textWidth, weights } from './sizes'
import { chartDrawn } from './titles'
import { filled, stroked, written } from './items'

export { ringGeometry, type RingGeometry, type RingOptions } from './ringGeometry'

export interface RingChartOptions extends RingOptions {
  readonly marks?: readonly FindingMark[]
}

export type RingScene = ChartScene<RingGeometry, RingChartOptions>

/**
 * The ring chart: a sector for each peg of the loom, a ring for each row, the right side shown.
 * With the drawing of an earlier version only what changed is drawn.
 */
export const ringChart = (
  work: Work,
  options: RingChartOptions = {},
  previous?: RingScene,
): RingScene => drawChart(ring, work, options, previous)

const ring: ChartKind<RingGeometry, RingChartOptions> = {
  geometry: ringGeometry,
  same: (a, b) => a.cell === b.cell && a.innermost === b.innermost && a.castOn === b.castOn,
  title: (work, { castOn }) =>
    languages[work.pattern.style.terms].drawings.ringChart(chartDrawn(work), castOn),
  grid: gridLayer,
  boxes: boxLayer,
  numbers: numberLayer,
  findings: findingLayer,
}

/** A layer whose origin is the middle of the ring. */
const layer = (key: string, { centrePoint }: RingGeometry, items: readonly Item[]): Layer => ({
  key,
  x: centrePoint[0],
  y: centrePoint[1],
  items,
})

/** From the middle of the ring. */
const polar = (angle: number, radius: number): Point => [
  radius * Math.sin(angle),
  -radius * Math.cos(angle),
]

/** The line between two sectors: straight, but for a little near the middle of the ring. */
function spoke({ angle, inner, outer }: RingGeometry, u: number): string {
  const steps = 6
  const points = Array.from({ length: steps + 1 }, (_, step): [number, number] => {
    const radius = inner * (outer / inner) ** (step / steps)
    return [angle(u, radius), radius]
  })
  return lineRadial().digits(2)(points) ?? ''
}

/** An arc over slots `from` .. `to`, on the circle of this radius. */
const arcOver = ({ angle }: RingGeometry, radius: number, from: number, to: number): string =>
  arcs([0, 0], [radius, angle(from, radius), angle(to, radius)])

/** The grid is cut up as the rows are: see slotsInSector. */
const rowsInPatch = 24

function gridLayer({ pattern }: Work, geometry: RingGeometry): Layer {
  const { heavyEvery } = pattern.style
  const { slots, lastRow, radius } = geometry
  const inkOf = (index: number) => (heavyEvery > 0 && index % heavyEvery === 0 ? 'heavy' : 'grid')
  const items: Item[] = []
  const put = (lines: Readonly<Record<'grid' | 'heavy', string>>) => {
    for (const ink of ['grid', 'heavy'] as const)
      if (lines[ink]) items.push(stroked(lines[ink], ink, weights[ink]))
  }
  for (let from = 0; from < slots.count; from += slotsInSector) {
    const to = Math.min(slots.count, from + slotsInSector)
    const spokes = { grid: '', heavy: '' }
    for (let u = Math.max(1, from); u < to; u++) spokes[inkOf(u)] += spoke(geometry, u)
    put(spokes)
    for (let first = 1; first <= lastRow; first += rowsInPatch) {
      const arcs = { grid: '', heavy: '' }
      for (let v = first; v < first + rowsInPatch && v <= lastRow; v++)
        arcs[inkOf(v)] += arcOver(geometry, radius(v), from, to)
      put(arcs)
    }
  }
  return layer('grid', geometry, items)
}

/** Repeats, bands, start and direction. */
function boxLayer({ chart }: Work, geometry: RingGeometry): Layer {
  return layer('boxes', geometry, [
    frameItem(geometry),
    ...repeatItems(geometry),
    ...bandItems(chart.bands, geometry),
    ...startItems(geometry),
  ])
}

function frameItem(geometry: RingGeometry): Item {
  const { inner, outer, slots } = geometry
  const arcs = [inner, outer].map((radius) => arcOver(geometry, radius, 0, slots.count))
  const d = [...arcs, spoke(geometry, 0), spoke(geometry, slots.count)].join('')
  return stroked(d, 'frame', weights.frame)
}

function repeatItems(geometry: RingGeometry): Item[] {
  const edges = new Set(geometry.slots.copies.flatMap(({ from, to }) => [from, to + 1]))
  const d = [...edges].map((u) => spoke(geometry, u)).join('')
  return d ? [stroked(d, 'repeat', weights.spoke)] : []
}

/** +1 where peg 1 stands right of the lane, -1 where it stands left of it. */
const towardsStart = ({ clockwise }: RingGeometry): number => (clockwise ? 1 : -1)

function bandItems(bands: Work['chart']['bands'], geometry: RingGeometry): Item[] {
  const { radius, lane, text } = geometry
  const side = towardsStart(geometry)
  const x = side * (lane.band + text * 0.35 + textWidth(timesText(10), text))
  return bands.flatMap(({ from, to, times }): Item[] => {
    const [y0, y1] = [-radius(from), -radius(to + 1)]
    const inward = 0.3 * Math.sign(y1 - y0)
    const bracket: Point[] = [
      [x + side * text * 0.35, y0 + inward],
      [x, y0 + inward],
      [x, y1 - inward],
      [x + side * text * 0.35, y1 - inward],
    ]
    return [
      stroked(polyline(bracket), 'band', weights.frame),
      written(
        timesText(times),
        [x - side * text * 0.3, (y0 + y1) / 2 + text * 0.35],
        text,
        side > 0 ? 'end' : 'start',
        'band',
        'bold',
      ),
    ]
  })
}

/** A solid arrow head at peg 1, row 1; an arrow inside the ring, the way the first round runs. */
function startItems(geometry: RingGeometry): Item[] {
  const { radius, inner, text, lane, angle, slots } = geometry
  const side = towardsStart(geometry)
  const start: Point = [side * (lane.numbers - textWidth('1', text) - text * 0.4), -radius(0.5)]
  const items: Item[] = [filled(arrowHead(start, (side * Math.PI) / 2, text * 0.85), 'note')]
  const r = inner - text * 1.4
  if (r < text * 2) return items
  const from = angle(0, inner)
  const to = from + side * Math.min((8 * text) / r, 2, Math.abs(angle(slots.count, inner) - from))
  const tip = polar(to, r)
  return [
    ...items,
    stroked(arcs([0, 0], [r, from, to - (side * text * 0.5) / r]), 'note', weights.mark),
    filled(arrowHead(tip, to + side * (Math.PI / 2 - (text * 0.3) / r), text * 0.75), 'note'),
  ]
}

function numberLayer({ numbers }: Work, geometry: RingGeometry): Layer {
  const { slots, lastRow, radius, outer, angle, text, lane, smallest } = geometry
  const side = towardsStart(geometry)
  const items: Item[] = []
  const number = ([x, y]: Point, n: number, anchor: 'start' | 'middle' | 'end') =>
    items.push(written(String(n), [x, y + text * 0.35], text, anchor))
  const rowStep = numberStep(smallest.height, text * 1.02)
  for (let row = 0; row <= lastRow; row++)
    if (isNumbered(row, rowStep))
      number(
        [side * lane.numbers, -radius(row + 0.5)],
        numbers[row] ?? row + 1,
        side > 0 ? 'end' : 'start',
      )
  const widest = textWidth(String(slots.count), text)
  const rim = outer + text * 0.5 + widest / 2
  const space = ((2 * Math.PI * rim) / slots.count) * 0.95
  const pegStep = numberStep(space, widest + text * 0.2)
  for (let slot = 0; slot < slots.count; slot++)
    if (isNumbered(slot, pegStep)) number(polar(angle(slot + 0.5, outer), rim), slot + 1, 'middle')
  return layer('numbers', geometry, items)
}

function findingLayer(marks: readonly FindingMark[], geometry: RingGeometry): Layer {
  const { centrePoint, lane, radius } = geometry
  const x = centrePoint[0] + towardsStart(geometry) * lane.finding
  const items = findingItems(marks, geometry, (row) => [x, centrePoint[1] - radius(row + 0.5)])
  return { key: 'findings', x: 0, y: 0, items }
}
