import { languages } from '../../languages/languages'
import type { Terms } from '../../languages/terms'
import { trace, type Trace } from '../../loom/trace'
import type { Habits } from '../../loom/work'
import type { Gauge, LoomSetup } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import type { Item, Layer, Scene } from '../scene'
import { acrossOf, middlePeg } from './across'
import { bendOf, fabricGeometry, frameOf, type FabricGeometry, type FabricView } from './geometry'
import { backLayer, coversOf } from './back'
import { heightsOf, type Heights } from './heights'
import { placeLoops, type PlacedRow } from './place'
import { samePlaced } from './same'
import { slitsOf, type Slit } from './slits'
import { drawTexture } from './texture'
import type { StitchSize } from './shapes'
import { drawYarn } from './yarn'

export { middlePeg, turnedBy } from './across'
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
  /** In which its title is told. */
  readonly terms?: Terms
  /** Width of a stitch, mm; by default that of the gauge, so that the fabric has its true size. */
  readonly stitch?: number
}

export interface FabricDrawing {
  readonly scene: Scene
  readonly geometry: FabricGeometry
  /** What each layer was drawn from, for the next drawing. */
  readonly placed: readonly PlacedRow[]
  readonly key: string
  readonly traced: Traced
  /** Which way the fabric lies, and what is followed. */
  readonly lies: string
}

type Loom = Pick<LoomSetup, 'pegs' | 'direction' | 'shape'>

/** Without a gauge: a stitch of 4 mm, with 4 rows to 3 stitches (from memory; only the swatch decides). */
const usual: StitchSize = { width: 4, height: 3 }

/** One stitch by the gauge, mm. */
export const stitchSize = (gauge: Gauge | null): StitchSize =>
  gauge ? { width: 100 / gauge.stitches, height: 100 / gauge.rows } : usual

const sizeOf = (gauge: Gauge | null, stitch: number | undefined): StitchSize => {
  const true_ = stitchSize(gauge)
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
  const { turn = middlePeg(loom), detail = 'yarn', follow = [], terms = 'us' } = options
  const view = loom.shape === 'bar' ? 'flat' : (options.view ?? 'flat')
  const size = sizeOf(gauge, options.stitch)
  const was = previous?.traced
  const traced =
    was?.rows === rows && was.habits === habits ? was : traceOf(rows, habits, loom.pegs)
  const { heights, slits } = traced
  const across = acrossOf(loom, turn)
  const bend = bendOf(view, loom.pegs, size.width)
  const frame = frameOf(bend, heights, size)
  const lies = [turn, loom.shape, loom.direction, ...follow].join('/')
  const placed =
    previous?.lies === lies && previous.traced === traced
      ? previous.placed
      : placeLoops(traced.strands, heights, slits, across, follow)

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
      const drawn = before && samePlaced(before, row) ? had.get(layerName(at)) : undefined
      if (drawn)
        return drawn.y === y && drawn.key === name ? drawn : layer(name, y, () => drawn.items)
    }
    return layer(name, y, () => draw(row, size, surface))
  })
  const layers = [
    backLayer(
      rows,
      heights,
      slits,
      across,
      size,
      bend,
      frame,
      detail === 'yarn' ? 'shade' : 'loop',
      had.get('back'),
    ),
    ...rowLayers,
  ]
  return {
    scene: {
      width: frame.width,
      height: frame.height,
      title: languages[terms].drawings.fabric({
        name: options.name,
        loom,
        rows: rows.length,
        view,
        opened: heights.opened,
      }),
      layers,
    },
    geometry: fabricGeometry(heights, coversOf(rows), across, bend, frame, size),
    placed,
    key,
    traced,
    lies,
  }
}

/** A row's layer is drawn when it is first looked at: of a large piece only a part is in view. */
function layer(key: string, y: number, draw: () => readonly Item[]): Layer {
  let items: readonly Item[] | undefined
  return {
    key,
    x: 0,
    y,
    get items() {
      return (items ??= draw())
    },
  }
}

/** What was followed and placed: it stays while the fabric is only turned, or drawn in other detail. */
interface Traced {
  readonly rows: readonly PatternRun[]
  readonly habits: Habits
  readonly strands: Trace
  readonly heights: Heights
  readonly slits: ReadonlyMap<number, readonly Slit[]>
}

function traceOf(rows: readonly PatternRun[], habits: Habits, pegs: number): Traced {
  const heights = heightsOf(rows, pegs)
  const slits = slitsOf(rows, heights)
  return { rows, habits, strands: trace(rows, habits), heights, slits }
}

const layerName = (index: number): string => (index === 0 ? 'cast-on' : `row-${index - 1}`)
