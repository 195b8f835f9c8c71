import { languages } from '../../languages/languages'
import { openingsOf, partOf } from '../../pattern/pegs/openings'
import type { Run } from '../../pattern/pattern'
import { stitchSize } from '../../pattern/totals'
import type { PieceWork } from '../../pattern/workPiece'
import { mm } from '../path'
import type { Item, Layer } from '../scene'
import { textWidth, weights } from '../sizes'
import { centimetres } from '../../pattern/size'
import { lengthsOf, rowsCounted } from './length'
import type { Slice } from './profile'
import { stroked } from '../items'

export interface SideOptions {
  /** The room for the picture, mm. */
  readonly width: number
  readonly height: number
  /** Letter height, mm. */
  readonly text: number
  /** The step that is looked at, 0-based. */
  readonly chosen: number | null
}

/** A slice at its place in the picture. */
export interface Placed extends Slice {
  /** y of its lower and upper edge. */
  readonly bottom: number
  readonly top: number
}

/** What stands beside a step: its name, and how long it is. */
interface Label {
  readonly step: number
  readonly lines: readonly string[]
  readonly y: number
}

/** What there is to say beside the picture, from the cast-on up. */
export function labelsOf(
  { steps, pattern }: PieceWork,
  slices: readonly Slice[],
  gauge: boolean,
): readonly Said[] {
  const lengths = lengthsOf(slices, steps.length)
  const openings = openingsOf(steps)
  const size = stitchSize(pattern)
  const { drawings } = languages[pattern.style.terms]
  return steps.flatMap((work, index): Said[] => {
    const { step } = work
    const mm = lengths[index] ?? 0
    const part = partOf(work)
    const pegs = part && pegsIn(part)
    const length = [
      rowsCounted(work, pattern.style.terms) ?? drawings.noRows,
      ...(gauge && mm > 0 ? [centimetres(mm)] : []),
    ]
    switch (step.kind) {
      case 'chart': {
        const name = step.times > 1 ? `${step.chart} × ${step.times}` : step.chart
        return [{ step: index, lines: [cut(name), ...length] }]
      }
      case 'plain':
        return [{ step: index, lines: [drawings.plain, ...length] }]
      case 'cast on':
        return [{ step: index, lines: [drawings.castOn(pegs)] }]
      case 'bind off': {
        const opening = openings.find(({ from }) => from === index)
        if (!opening) return [{ step: index, lines: [drawings.bindOff(step.how, pegs)] }]
        const open = pegsIn(opening.pegs)
        const wide = size && centimetres(open * size.width)
        return [{ step: index, lines: drawings.opening(open, wide) }]
      }
      default:
        return []
    }
  })
}

const pegsIn = ({ from, to }: Run): number => to - from + 1

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

export function placeLabels(
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
export function withRoom(
  labels: readonly Said[],
  { text, height, width }: SideOptions,
): readonly Said[] {
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

/** Half the height of some lines, mm. */
export const halfOf = (lines: readonly string[], text: number): number => {
  const line = text * 1.25
  return (lines.length * line) / 2 + line * 0.15
}

export function labelLayer(
  labels: readonly PlacedLabel[],
  placed: readonly Placed[],
  { text, x, centre, scale, chosen }: LabelRoom,
): Layer {
  const items = labels.flatMap(({ step, lines, y, at }): Item[] => {
    const slice = placed.find((one) => one.step === step)
    const rim = centre + ((slice?.lower ?? 0) * scale) / 2 + 0.6
    return [
      stroked(
        mm`M${rim} ${y}L${Math.max(rim, x - 2.2)} ${y}L${x - 0.6} ${at}`,
        step === chosen ? 'place' : 'note',
        step === chosen ? weights.frame : weights.grid,
      ),
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
