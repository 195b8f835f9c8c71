import { trace } from '../../loom/trace'
import type { Habits } from '../../loom/work'
import type { Gauge, LoomSetup } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import type { Item, Layer, Scene } from '../scene'
import { acrossOf, middlePeg, type Across } from './across'
import {
  bendOf,
  fabricGeometry,
  frameOf,
  type Bend,
  type FabricGeometry,
  type FabricView,
  type Frame,
} from './geometry'
import { heightsOf, type Heights } from './heights'
import { area } from './inked'
import { Pen } from './pen'
import { placeLoops, type PlacedRow } from './place'
import { samePlaced } from './same'
import { drawTexture } from './texture'
import type { StitchSize } from './shapes'
import { drawYarn } from './yarn'

export { middlePeg } from './across'
export { fabricViews, type FabricGeometry, type FabricView } from './geometry'

export const fabricDetails = ['texture', 'yarn'] as const
export type FabricDetail = (typeof fabricDetails)[number]

export interface FabricOptions {
  /** The peg at the middle, 0-based, parts of pegs too; by default peg 1 stands at its edge. */
  readonly turn?: number
  /** Opened flat, or the front half of the tube. A bar is always flat. */
  readonly view?: FabricView
  readonly detail?: FabricDetail
  /** Wales (columns of the cast-on) to be followed, in tones in this order. */
  readonly follow?: readonly number[]
  /** Name of the piece, for the title. */
  readonly name?: string
  /** Width of a stitch, mm; by default that of the gauge, so that the fabric has its true size. */
  readonly stitch?: number
}

export interface FabricDrawing {
  readonly scene: Scene
  readonly geometry: FabricGeometry
  /** What each layer was drawn from, for the next drawing. */
  readonly placed: readonly PlacedRow[]
  readonly key: string
}

type Loom = Pick<LoomSetup, 'pegs' | 'direction' | 'shape'>

/** Without a gauge: a stitch of 4 mm, with 4 rows to 3 stitches (from memory; only the swatch decides). */
const usual: StitchSize = { width: 4, height: 3 }

const sizeOf = (gauge: Gauge | null, stitch: number | undefined): StitchSize => {
  const true_ = gauge ? { width: 100 / gauge.stitches, height: 100 / gauge.rows } : usual
  const scale = stitch === undefined ? 1 : stitch / true_.width
  return { width: true_.width * scale, height: true_.height * scale }
}

/**
 * The right side of the fabric, loop by loop, from rows worked one after the other: cast-on at the
 * bottom, peg 1 where it really is. With an earlier drawing, rows that look the same keep their layer.
 */
export function fabricDrawing(
  rows: readonly PatternRun[],
  habits: Habits,
  loom: Loom,
  gauge: Gauge | null,
  options: FabricOptions = {},
  previous?: FabricDrawing,
): FabricDrawing {
  const { turn = middlePeg(loom), detail = 'yarn', follow = [] } = options
  const view = loom.shape === 'bar' ? 'flat' : (options.view ?? 'flat')
  const size = sizeOf(gauge, options.stitch)
  const heights = heightsOf(rows, loom.pegs)
  const across = acrossOf(loom, turn)
  const bend = bendOf(view, loom.pegs, size.width)
  const frame = frameOf(bend, heights, size)
  const placed = placeLoops(trace(rows, habits), heights, across, follow)

  const surface = { x: (x: number) => frame.middle + bend.x(x), shows: bend.shows }
  const draw = detail === 'yarn' ? drawYarn : drawTexture
  const key = [view, detail, size.width, size.height, loom.pegs].join('/')
  const old = previous?.key === key ? previous : undefined
  const had = new Map(old?.scene.layers.map((layer) => [layer.key, layer]))
  const shift = (old?.placed.length ?? 0) - placed.length
  const rowLayers = placed.map((row, index): Layer => {
    const name = layerName(index)
    const y = frame.bottom - row.level * size.height
    // A row that others were put in before, or taken out before, has another number.
    for (const at of shift === 0 ? [index] : [index, index + shift]) {
      const before = old?.placed[at]
      const was = before && samePlaced(before, row) ? had.get(layerName(at)) : undefined
      if (was) return was.y === y && was.key === name ? was : { ...was, key: name, y }
    }
    return { key: name, x: 0, y, items: draw(row, size, surface) }
  })
  const cells = cellsOf(rows, heights, across)
  const layers = [backLayer(cells, size, bend, frame, detail, had.get('back')), ...rowLayers]
  return {
    scene: {
      width: frame.width,
      height: frame.height,
      title: titleOf(options.name, rows.length, loom, view, heights),
      layers,
    },
    geometry: fabricGeometry(heights, coversOf(rows), across, bend, frame, size),
    placed,
    key,
  }
}

const layerName = (index: number): string => (index === 0 ? 'cast-on' : `row-${index - 1}`)

const coversOf =
  (rows: readonly PatternRun[]) =>
  (row: number, peg: number): boolean => {
    const run = rows[row]
    if (!run || peg < run.row.from || peg > run.row.to) return false
    return (run.after.stacks[peg]?.length ?? 0) > 0
  }

/** Fabric from `from` to `to` rows high, in columns from left to right. */
interface Column {
  readonly x: number
  readonly from: number
  readonly to: number
}

function cellsOf(
  rows: readonly PatternRun[],
  { base }: Heights,
  across: Across,
): readonly Column[] {
  const covers = coversOf(rows)
  const columns: Column[] = []
  for (let peg = 0; peg < across.pegs; peg++) {
    const x = across.of(peg)
    let open: { from: number; to: number } | undefined
    for (let row = 0; row < rows.length; row++) {
      if (!covers(row, peg)) continue
      const level = base[row]?.[peg] ?? 0
      if (open?.to === level) open.to++
      else {
        if (open) columns.push({ x, ...open })
        open = { from: level, to: level + 1 }
      }
    }
    if (open) columns.push({ x, ...open })
  }
  return columns.sort((a, b) => a.x - b.x || a.from - b.from)
}

/** What shows between the strands. */
function backLayer(
  columns: readonly Column[],
  { width, height }: StitchSize,
  bend: Bend,
  frame: Frame,
  detail: FabricDetail,
  was: Layer | undefined,
): Layer {
  const pen = new Pen({ x: (x) => frame.middle + bend.x(x), shows: bend.shows })
  const seen = columns.filter(({ x }) => bend.shows(x * width))
  for (let i = 0; i < seen.length; i++) {
    const first = seen[i] as Column
    let last = first
    for (let next = seen[i + 1]; next && joins(last, next); next = seen[i + 1]) {
      last = next
      i++
    }
    const [left, right] = [(first.x - 0.5) * width, (last.x + 0.5) * width]
    const [top, low] = [-first.to * height, -(first.from - (first.from === 0 ? 0.3 : 0)) * height]
    pen.area([left, top], [left, low], [right, low], [right, top])
  }
  const items: Item[] = area(pen.d, detail === 'yarn' ? 'shade' : 'loop')
  if (was && was.y === frame.bottom && sameItems(was.items, items)) return was
  return { key: 'back', x: 0, y: frame.bottom, items }
}

const joins = (a: Column, b: Column): boolean =>
  a.from === b.from && a.to === b.to && Math.abs(b.x - a.x - 1) < 1e-6

const sameItems = (a: readonly Item[], b: readonly Item[]): boolean =>
  a.length === b.length &&
  a.every((item, i) => {
    const other = b[i]
    return (
      item.kind === 'path' && other?.kind === 'path' && item.d === other.d && item.ink === other.ink
    )
  })

function titleOf(
  name: string | undefined,
  rows: number,
  loom: Loom,
  view: FabricView,
  heights: Heights,
): string {
  const row = loom.shape === 'ring' ? 'rounds' : 'rows'
  const how = view === 'tube' ? 'the front half of the tube' : 'lying flat'
  const opened = heights.opened ? ', opened flat at the short rows' : ''
  const side = loom.direction === 'clockwise' ? 'left' : 'right'
  return `Fabric of ${name ? `${name}: ` : ''}${rows} ${row} on ${loom.pegs} pegs as the right side looks, ${how}${opened}; cast-on at the bottom, pegs count to the ${side}.`
}
