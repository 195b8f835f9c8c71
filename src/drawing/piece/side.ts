import { together } from '../../pattern/pegs/together'
import { languages } from '../../languages/languages'
import { runsRightToLeft } from '../../loom/direction'
import { openingsOf } from '../../pattern/pegs/openings'
import type { PieceWork } from '../../pattern/workPiece'
import { closed, polyline, rectangle, mm } from '../path'
import type { Run } from '../../pattern/pattern'
import type { Item, Layer, Scene } from '../scene'
import { textWidth, weights } from '../sizes'
import { centimetres } from '../../pattern/size'
import { lieOf, lyingOf, placeOpenings, type Lying, type PlacedOpening } from './openings'
import { lengthOfPiece } from './length'
import { profileOf, type Drop, type Slice } from './profile'
import {
  halfOf,
  labelLayer,
  labelsOf,
  placeLabels,
  withRoom,
  type Placed,
  type SideOptions,
} from './sideLabels'
import { stroked } from '../items'

export type { SideOptions } from './sideLabels'

/** Where a step lies in the picture. */
export interface StepBox {
  readonly step: number
  readonly top: number
  readonly bottom: number
}

export interface SidePicture {
  readonly scene: Scene
  readonly boxes: readonly StepBox[]
  /** What is said of the steps, from `labelsFrom` on, mm. */
  readonly labels: readonly StepBox[]
  readonly labelsFrom: number
}

/** The step at a place of the picture, mm; null where none lies. */
export function stepAt({ boxes, labels, labelsFrom }: SidePicture, x: number, y: number) {
  const hit = (x >= labelsFrom ? labels : boxes)
    .filter(({ top, bottom }) => y >= top && y <= bottom)
    // An edge lies on the rim of the rows beside it, and a heel on those it stands out of.
    .toSorted((a, b) => a.bottom - a.top - (b.bottom - b.top))
  return hit[0]?.step ?? null
}

/** The piece from the side, cast-on edge at the bottom, in true proportions, with its lengths. */
export function sidePicture(work: PieceWork, options: SideOptions): SidePicture {
  const slices = profileOf(work)
  const { width, height, text, chosen } = options
  const gauge = work.pattern.gauge !== null
  const total = slices.reduce((sum, slice) => sum + slice.height, 0)
  const widest = Math.max(1, ...slices.map(({ lower, upper }) => Math.max(lower, upper)))
  const furthest = 1.1 * Math.max(0, ...slices.map(({ out }) => out * 0.85))
  const labelled = withRoom(labelsOf(work, slices, gauge), options)
  const longest = Math.max(0, ...labelled.flatMap(({ lines }) => lines.map(({ length }) => length)))
  const beside = Math.min(width * 0.62, textWidth('n', text) * longest + 4)
  const edge = 1.5
  const roomAcross = Math.max(4, width - beside - 2 * edge)
  const over = overhang(slices, total)
  const high = over.above + total + over.below
  const scale = Math.min(roomAcross / (widest + furthest), (height - 2 * edge) / Math.max(1, high))
  const centre = edge + furthest * scale + (widest * scale) / 2
  const peg1AtRight = runsRightToLeft(work.pattern.loom.direction)
  const placed = placeSlices(slices, scale, (height + high * scale) / 2 - over.below * scale)
  const openings = placeOpenings(openingsOf(work.steps), placed)
  const cup = slices.find(({ kind, pegs }) => kind === 'cup' && pegs !== null)?.pegs ?? null
  const lying = lyingOf(work.pattern.loom, openings, cup)
  const standing: Standing = { centre, scale, peg1AtRight, lying }
  const { drawings } = languages[work.pattern.style.terms]
  const length = gauge ? centimetres(lengthOfPiece(slices)) : null
  const labels = placeLabels(labelled, placed, text, height)
  const labelX = width - beside + 2
  const drawn = (slice: Placed): Layer => sliceLayer(slice, standing, slice.step === chosen)
  const layers = [
    ...inFront(placed.filter((slice) => !isPart(slice))).map(drawn),
    ...openings.map((opening) => openingLayer(opening, standing)),
    // The edges of an opening lie on its rim.
    ...placed.filter(isPart).map(drawn),
    labelLayer(labels, placed, { text, chosen, x: labelX, centre, scale }),
  ]
  return {
    scene: {
      width,
      height,
      title: drawings.side(work.steps.length, together(work).rows, length),
      layers,
    },
    boxes: boxesOf(placed),
    labels: labels.map(({ step, lines, at }) => {
      const half = halfOf(lines, text)
      return { step, top: at - half, bottom: at + half }
    }),
    labelsFrom: labelX - 0.6,
  }
}

/** How far a cup near an end of the piece reaches beyond it, mm of the real thing. */
function overhang(slices: readonly Slice[], total: number): { above: number; below: number } {
  let at = 0
  let above = 0
  let below = 0
  for (const { height, out } of slices) {
    above = Math.max(above, at + out * cupHeight - total)
    below = Math.max(below, out * cupHeight - at)
    at += height
  }
  return { above, below }
}

/** A cup is drawn this high up and down from its fold, in parts of how far it stands out. */
const cupHeight = 0.8

const isPart = ({ kind, pegs }: Slice): boolean => kind === 'edge' && pegs !== null

/** What stands out is drawn over what it stands out of. */
const inFront = (placed: readonly Placed[]): readonly Placed[] =>
  placed.toSorted((a, b) => Number(a.kind === 'cup') - Number(b.kind === 'cup'))

function placeSlices(slices: readonly Slice[], scale: number, start: number): readonly Placed[] {
  let y = start
  return slices.map((slice) => {
    const bottom = y
    y -= slice.height * scale
    return { ...slice, bottom, top: y }
  })
}

function boxesOf(placed: readonly Placed[]): readonly StepBox[] {
  const boxes = new Map<number, StepBox>()
  for (const { step, top, bottom, out } of placed) {
    const reach = out > 0 ? 2 : 0.6
    const box = boxes.get(step)
    boxes.set(step, {
      step,
      top: Math.min(box?.top ?? top - reach, top - reach),
      bottom: Math.max(box?.bottom ?? bottom + reach, bottom + reach),
    })
  }
  return [...boxes.values()]
}

interface Standing {
  readonly centre: number
  readonly scale: number
  readonly peg1AtRight: boolean
  readonly lying: Lying
}

function sliceLayer(slice: Placed, standing: Standing, chosen: boolean): Layer {
  const { bottom, kind } = slice
  return {
    key: mm`step-${slice.step}-${kind}-${bottom}`,
    x: 0,
    y: 0,
    items: kind === 'cup' ? cup(slice, standing, chosen) : bodyOf(slice, standing, chosen),
  }
}

const path = (d: string, ink: Item['ink'], stroke: number, fill: boolean): Item => ({
  kind: 'path',
  d,
  ink,
  stroke,
  fill,
})

function bodyOf(slice: Placed, standing: Standing, chosen: boolean): Item[] {
  const { top, bottom, kind } = slice
  const { centre, scale } = standing
  if (kind === 'edge')
    return slice.pegs ? partEdge(slice, slice.pegs, standing) : edgeLine(upperEdge(slice, standing))
  if (kind === 'gathered' || kind === 'toe') {
    const d = cap(slice, centre, scale)
    return [path(d, chosen ? 'unworked' : 'ground', 0, true), path(d, 'line', weights.frame, false)]
  }
  const body = closed([
    ...along(slice.below, bottom, slice.lower, standing),
    ...upperEdge(slice, standing).toReversed(),
  ])
  const middle = mm`M${centre} ${bottom}L${centre} ${top}`
  return [
    path(body, chosen ? 'unworked' : 'ground', 0, true),
    path(body, 'line', weights.frame, false),
    ...(kind === 'open' ? [path(middle, 'line', weights.box, false)] : []),
  ]
}

const edgeLine = (line: Corner[]): Item[] => [path(polyline(line), 'line', 0.6, false)]

/** An edge on some of the pegs: dashed where it lies behind. */
const partEdge = ({ top, lower }: Placed, pegs: Run, { centre, scale, lying }: Standing): Item[] =>
  lieOf(lying, pegs).map(({ left, right, behind }): Item => {
    const x = (part: number): number => centre + (part - 0.5) * lower * scale
    const d = mm`M${x(left)} ${top}L${x(right)} ${top}`
    return { ...path(d, 'line', behind ? weights.heavy : 0.6, false), ...(behind ? dashed : {}) }
  })

const dashed = { dash: '1 1' } as const

/** One looks through an opening in front; one behind is dashed. Its edges are drawn with their steps. */
function openingLayer(opening: PlacedOpening, { centre, scale, lying }: Standing): Layer {
  const { bottom, top, width, pegs, from } = opening
  const items = lieOf(lying, pegs).flatMap(({ left, right, behind }): Item[] => {
    const x = centre + (left - 0.5) * width * scale
    const hole = rectangle(x, top, (right - left) * width * scale, bottom - top)
    return behind
      ? [{ ...path(hole, 'note', weights.heavy, false), ...dashed }]
      : [path(hole, 'shade', 0, true), path(hole, 'line', weights.frame, false)]
  })
  return { key: `opening-${from}`, x: 0, y: 0, items }
}

type Corner = [x: number, y: number]

const upperEdge = (slice: Placed, standing: Standing): Corner[] => {
  const width = slice.kind === 'edge' ? slice.lower : slice.upper
  return along(slice.drop, slice.top, width, standing)
}

/** From left to right, as it slopes. */
function along(drop: Drop | null, y: number, width: number, standing: Standing): Corner[] {
  const { centre, scale, peg1AtRight } = standing
  const half = (width * scale) / 2
  if (!drop)
    return [
      [centre - half, y],
      [centre + half, y],
    ]
  const fromLeft = peg1AtRight ? drop.toReversed() : drop
  const step = (2 * half) / (fromLeft.length - 1)
  return fromLeft.map((down, at) => [centre - half + at * step, y + down * scale])
}

/** A cup of short rows stands out at one side, as a heel does; dashed: where it folds. */
function cup({ lower, bottom, out }: Placed, { centre, scale }: Standing, chosen: boolean): Item[] {
  const left = centre - (lower * scale) / 2
  const reach = out * scale
  const [low, high] = [bottom + reach * cupHeight, bottom - reach * cupHeight]
  const bulge = left - reach * 1.1
  const curve = mm`M${left} ${low}C${bulge} ${low} ${bulge} ${high} ${left} ${high}`
  return [
    path(`${curve}Z`, chosen ? 'unworked' : 'ground', 0, true),
    path(curve, 'line', weights.frame, false),
    stroked(mm`M${left} ${low}L${centre} ${bottom}L${left} ${high}`, 'note', weights.heavy, '1 1'),
  ]
}

/** A cup at the end closes the piece, as a toe does: it folds over from one side to the other. */
const cap = ({ lower, bottom, top }: Placed, centre: number, scale: number): string => {
  const half = (lower * scale) / 2
  const [left, right] = [centre - half, centre + half]
  return mm`M${left} ${bottom}C${left} ${top} ${centre - half * 0.7} ${top} ${centre} ${top}C${centre + half * 0.7} ${top} ${right} ${top} ${right} ${bottom}`
}
