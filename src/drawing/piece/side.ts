import type { PieceWork } from '../../pattern/workPiece'
import { closed, moveTo, polyline, short } from '../path'
import type { Item, Layer, Scene } from '../scene'
import { textWidth, weights } from '../sizes'
import { centimetres, lengthsOf, rowsCounted } from './length'
import { profileOf, type Slice } from './profile'

export interface SideOptions {
  /** The room for the picture, mm. */
  readonly width: number
  readonly height: number
  /** Letter height, mm. */
  readonly text: number
  /** The step that is looked at, 0-based. */
  readonly chosen: number | null
}

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

/** What stands beside a step: its name, and how long it is. */
interface Label {
  readonly step: number
  readonly lines: readonly string[]
  readonly y: number
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
  const scale = Math.min(roomAcross / (widest + furthest), (height - 2 * edge) / Math.max(1, total))
  const centre = edge + furthest * scale + (widest * scale) / 2
  const placed = placeSlices(slices, scale, (height + total * scale) / 2)
  const labels = placeLabels(labelled, placed, text, height)
  const labelX = width - beside + 2
  const layers = [
    ...inFront(placed).map((slice) => sliceLayer(slice, centre, scale, slice.step === chosen)),
    labelLayer(labels, placed, { text, chosen, x: labelX, centre, scale }),
  ]
  return {
    scene: { width, height, title: titleOf(work, total, gauge), layers },
    boxes: boxesOf(placed),
    labels: labels.map(({ step, lines, at }) => {
      const half = halfOf(lines, text)
      return { step, top: at - half, bottom: at + half }
    }),
    labelsFrom: labelX - 0.6,
  }
}

/** What stands out is drawn over what it stands out of. */
const inFront = (placed: readonly Placed[]): readonly Placed[] =>
  placed.toSorted((a, b) => Number(a.kind === 'cup') - Number(b.kind === 'cup'))

interface Placed extends Slice {
  /** y of its lower and upper edge. */
  readonly bottom: number
  readonly top: number
}

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

function sliceLayer(slice: Placed, centre: number, scale: number, chosen: boolean): Layer {
  const { top, bottom, kind } = slice
  const [low, high] = [(slice.lower * scale) / 2, (slice.upper * scale) / 2]
  const item = (d: string, ink: Item['ink'], stroke: number, fill: boolean): Item => ({
    kind: 'path',
    d,
    ink,
    stroke,
    fill,
  })
  const body = closed([
    [centre - low, bottom],
    [centre - high, top],
    [centre + high, top],
    [centre + low, bottom],
  ])
  const fill: Item[] = chosen ? [item(body, 'unworked', 0, true)] : []
  const items: Item[] =
    kind === 'cup'
      ? cup(slice, centre, scale, chosen)
      : kind === 'edge'
        ? [
            item(
              polyline([
                [centre - low, top],
                [centre + low, top],
              ]),
              'line',
              0.6,
              false,
            ),
          ]
        : kind === 'gathered' || kind === 'toe'
          ? [
              item(cap(slice, centre, scale), chosen ? 'unworked' : 'ground', 0, true),
              item(cap(slice, centre, scale), 'line', weights.frame, false),
            ]
          : [
              ...fill,
              item(body, 'ground', 0, !chosen),
              item(body, 'line', weights.frame, false),
              ...(kind === 'open'
                ? [
                    item(
                      polyline([
                        [centre, bottom],
                        [centre, top],
                      ]),
                      'line',
                      weights.box,
                      false,
                    ),
                  ]
                : []),
            ]
  return { key: `step-${slice.step}-${kind}-${short(bottom)}`, x: 0, y: 0, items }
}

/** A cup of short rows stands out at one side, as a heel does; dashed: where it folds. */
function cup(
  { lower, bottom, out }: Placed,
  centre: number,
  scale: number,
  chosen: boolean,
): Item[] {
  const left = centre - (lower * scale) / 2
  const reach = out * scale
  const [low, high] = [bottom + reach * 0.8, bottom - reach * 0.8]
  const bulge = left - reach * 1.1
  const curve = `${moveTo([left, low])}C${short(bulge)} ${short(low)} ${short(bulge)} ${short(high)} ${short(left)} ${short(high)}`
  return [
    { kind: 'path', d: `${curve}Z`, ink: chosen ? 'unworked' : 'ground', stroke: 0, fill: true },
    { kind: 'path', d: curve, ink: 'line', stroke: weights.frame, fill: false },
    {
      kind: 'path',
      d: polyline([
        [left, low],
        [centre, bottom],
        [left, high],
      ]),
      ink: 'note',
      stroke: weights.heavy,
      fill: false,
      dash: '1 1',
    },
  ]
}

/** A cup at the end closes the piece, as a toe does: it folds over from one side to the other. */
const cap = ({ lower, bottom, top }: Placed, centre: number, scale: number): string => {
  const half = (lower * scale) / 2
  const [left, right] = [centre - half, centre + half]
  return `${moveTo([left, bottom])}C${short(left)} ${short(top)} ${short(centre - half * 0.7)} ${short(top)} ${short(centre)} ${short(top)}C${short(centre + half * 0.7)} ${short(top)} ${short(right)} ${short(top)} ${short(right)} ${short(bottom)}`
}

/** What there is to say beside the picture, from the cast-on up. */
function labelsOf({ steps }: PieceWork, slices: readonly Slice[], gauge: boolean): readonly Said[] {
  const lengths = lengthsOf(slices, steps.length)
  return steps.flatMap((work, index): Said[] => {
    const { step } = work
    const mm = lengths[index] ?? 0
    const length = [rowsCounted(work) ?? 'no rows', ...(gauge && mm > 0 ? [centimetres(mm)] : [])]
    switch (step.kind) {
      case 'chart': {
        const name = step.times > 1 ? `${step.section} × ${step.times}` : step.section
        return [{ step: index, lines: [cut(name), ...length] }]
      }
      case 'plain':
        return [{ step: index, lines: ['plain', ...length] }]
      case 'cast on':
        return [{ step: index, lines: ['cast on'] }]
      case 'bind off': {
        const isName = step.how === 'gather' || step.how === 'graft'
        return [{ step: index, lines: [isName ? step.how : 'bind off'] }]
      }
      default:
        return []
    }
  })
}

/** A long name would leave no room for the picture. */
const mostLetters = 14
const cut = (name: string): string =>
  name.length > mostLetters ? `${name.slice(0, mostLetters - 1).trimEnd()}…` : name

interface Said {
  readonly step: number
  readonly lines: readonly string[]
}

interface LabelRoom extends Pick<SideOptions, 'text' | 'chosen'> {
  readonly x: number
  readonly centre: number
  readonly scale: number
}

type PlacedLabel = Label & { readonly at: number }

function placeLabels(
  labelled: readonly Said[],
  placed: readonly Placed[],
  text: number,
  height: number,
): readonly PlacedLabel[] {
  const labels = labelled.flatMap(({ step, lines }): Label[] => {
    const own = placed.filter((slice) => slice.step === step)
    const [first] = own
    const last = own.at(-1)
    return first && last ? [{ step, lines, y: (first.bottom + last.top) / 2 }] : []
  })
  return apart(labels, text, height)
}

/** What stands beside a step, from all there is to say down to its name. */
const fuller: readonly ((lines: readonly string[]) => readonly string[])[] = [
  (lines) => lines,
  (lines) => (lines.length > 2 ? [lines[0] ?? '', lines.at(-1) ?? ''] : lines),
  (lines) => [[lines[0], ...lines.slice(1).slice(-1)].join(', ')],
]

/**
 * The fullest that there is room for: in height, and across in half of the width. Where even the
 * names are too much, the last steps stay without.
 */
function withRoom(labels: readonly Said[], { text, height, width }: SideOptions): readonly Said[] {
  for (const shorten of fuller) {
    const said = labels.map(({ step, lines }) => ({ step, lines: shorten(lines) }))
    const high = said.reduce((sum, { lines }) => sum + 2 * halfOf(lines, text), 0)
    const long = Math.max(0, ...said.flatMap(({ lines }) => lines.map(({ length }) => length)))
    const isFullest = shorten === fuller[0]
    if (high <= height && (isFullest || textWidth('n', text) * long <= width / 2)) return said
  }
  const fits = Math.max(1, Math.floor(height / (2 * halfOf([''], text))))
  return labels.slice(0, fits).map(({ step, lines }) => ({ step, lines: lines.slice(0, 1) }))
}

const halfOf = (lines: readonly string[], text: number): number => {
  const line = text * 1.25
  return (lines.length * line) / 2 + line * 0.15
}

function labelLayer(
  labels: readonly PlacedLabel[],
  placed: readonly Placed[],
  { text, x, centre, scale, chosen }: LabelRoom,
): Layer {
  const items = labels.flatMap(({ step, lines, y, at }): Item[] => {
    const slice = placed.find((one) => one.step === step)
    const rim = centre + ((slice?.lower ?? 0) * scale) / 2 + 0.6
    return [
      {
        kind: 'path',
        d: polyline([
          [rim, y],
          [Math.max(rim, x - 2.2), y],
          [x - 0.6, at],
        ]),
        ink: step === chosen ? 'place' : 'note',
        stroke: step === chosen ? weights.frame : weights.grid,
        fill: false,
      },
      ...lines.map((line, index): Item => ({
        kind: 'text',
        x,
        y: at + text * (0.35 + 1.2 * (index - (lines.length - 1) / 2)),
        text: line,
        size: text,
        anchor: 'start',
        ink: index > 0 ? 'note' : step === chosen ? 'place' : 'line',
        ...(index === 0 ? { weight: 'bold' } : {}),
      })),
    ]
  })
  return { key: 'labels', x: 0, y: 0, items }
}

/** Labels moved apart, from the bottom up, so that none covers another; then down from the top. */
function apart(labels: readonly Label[], text: number, height: number): readonly PlacedLabel[] {
  const half = ({ lines }: Label): number => halfOf(lines, text)
  const places = labels.map(({ y }) => y)
  let floor = height
  labels.forEach((label, index) => {
    const at = Math.min(places[index] ?? 0, floor - half(label))
    places[index] = at
    floor = at - half(label)
  })
  let ceiling = 0
  for (let index = labels.length - 1; index >= 0; index--) {
    const label = labels[index] as Label
    const at = Math.max(places[index] ?? 0, ceiling + half(label))
    places[index] = at
    ceiling = at + half(label)
  }
  return labels.map((label, index) => ({ ...label, at: places[index] ?? label.y }))
}

function titleOf(work: PieceWork, total: number, gauge: boolean): string {
  const rows = `${work.rows} ${work.rows === 1 ? 'row' : 'rows'}`
  const length = gauge
    ? `, ${centimetres(total)} long`
    : ', without a gauge: proportions are assumed'
  return `The piece from the side: ${work.steps.length} steps, ${rows}${length}.`
}
