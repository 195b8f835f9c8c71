import type { Moment } from '../../loom/walk'
import { emptyStack, type Stack } from '../../loom/strand'
import type { LoomSetup } from '../../pattern/pattern'
import { keeper } from '../keep'
import type { Item, Layer, Scene } from '../scene'
import { actingIn, freshStrands, type Fresh } from './acting'
import { band, levels, postItems, type Band } from './band'
import { keptPeg, type PegLayer } from './pegLayers'
import { needleOnStrip, type HeldLoops } from './stripNeedle'
import { stripGeometry, type StripGeometry, type StripOptions } from './stripGeometry'
import { moveArrow } from './stripArrows'
import { rimItems } from './stripRim'
import { toolAtStrip } from './stripTool'
import { yarnOnStrip } from './stripYarn'
import type { StripPart } from './window'

export interface StripFromFrontOptions extends StripOptions {
  /** The moments that led here, oldest first; the last is the one just before. */
  readonly trail?: readonly Moment[]
  /** Where the spare needle is drawn, as a peg; else at the acting peg. */
  readonly needleAt?: number
  /** Written in the corner. */
  readonly number?: number
  /** Draw the tool and the arrow of the move. */
  readonly withMove?: boolean
}

/** What stands in the scene, for those who must know without looking. */
export interface DrawnStrip {
  /** From the left; a band for each strand, bottom to top. */
  readonly pegs: readonly PegLayer<Band>[]
  /** First taken first. */
  readonly needle: readonly HeldLoops[]
  /** Where the yarn hangs, mm; null when that gap is not shown. */
  readonly yarn: number | null
}

export interface StripDrawing {
  readonly scene: Scene
  readonly geometry: StripGeometry
  readonly drawn: DrawnStrip
}

const keepGeometry = keeper<StripGeometry>()
const keepRim = keeper<Layer>()

/** A run of pegs as the knitter sees them: from the outside, on the right side of the fabric. */
export function stripFromFront(
  moment: Moment,
  loom: LoomSetup,
  part: StripPart,
  options: StripFromFrontOptions = {},
): StripDrawing {
  const { trail = [], withMove = true } = options
  const sides = new Set(moment.needle.map(({ side }) => side))
  const room = options.room ?? { inside: true, outside: false }
  const inside = room.inside || sides.has('inside')
  const outside = room.outside || sides.has('outside')
  const places = 'count' in part ? [part.centre, part.count, 'count'] : [part.from, part.to, 'run']
  const geometry = keepGeometry(
    [loom.shape, loom.pegs, loom.direction, ...places, options.unit, inside, outside],
    () => stripGeometry(loom, part, { ...options, room: { inside, outside } }),
  )
  const { pegs, leftward, unit, width, height } = geometry
  const before = trail.at(-1)
  const fresh = withMove ? freshStrands(moment, before) : null
  const acting = actingIn(moment.move)
  const held = needleOnStrip(moment, geometry, options.needleAt ?? acting.peg ?? moment.gap)
  const yarn = yarnOnStrip([...trail, moment], geometry, loom, held)
  const drawn = (leftward ? pegs.toReversed() : pegs).map((peg) =>
    drawPeg(peg, moment.stacks[peg] ?? emptyStack, geometry, fresh),
  )
  const onPage = (key: string, items: readonly Item[]): Layer => ({ key, x: 0, y: 0, items })
  const layers: Layer[] = [
    onPage('inside', [...held.inside, ...yarn.behind]),
    ...drawn.map(({ layer }) => layer),
    keepRim([geometry], () => onPage('rim', rimItems(geometry))),
    onPage('outside', [...held.outside, ...yarn.before]),
    onPage(
      'move',
      withMove
        ? [...toolAtStrip(moment, geometry), ...moveArrow(moment, geometry, held, before)]
        : [],
    ),
  ]
  if (options.number !== undefined) layers.push(onPage('number', numberItems(options.number, unit)))
  return {
    scene: { width, height, title: titleOf(geometry), layers },
    geometry,
    drawn: { pegs: drawn, needle: held.loops, yarn: yarn.x },
  }
}

function drawPeg(
  peg: number,
  stack: Stack,
  geometry: StripGeometry,
  fresh: Fresh | null,
): PegLayer<Band> {
  const mine = fresh?.peg === peg ? fresh : null
  return keptPeg(geometry, peg, stack, mine ? `${mine.from}-${mine.to}` : '', () => {
    const { unit, rim, x } = geometry
    const kinds = stack.map(({ kind }) => kind)
    const heights = levels(kinds)
    const isFresh = (level: number): boolean =>
      mine !== null && level >= mine.from && level < mine.to
    const bands = kinds.map((kind, level) => band(kind, heights[level] ?? 0, unit, isFresh(level)))
    const items = [
      ...bands.flatMap(({ behind }) => behind),
      ...postItems(unit, bands.length > 0),
      ...bands.flatMap(({ before }) => before),
    ]
    return { peg, bands, layer: { key: `peg ${peg + 1}`, x: x(peg) ?? 0, y: rim, items } }
  })
}

const numberItems = (number: number, unit: number): readonly Item[] => [
  {
    kind: 'text',
    x: 0.15 * unit,
    y: 0.55 * unit,
    text: String(number),
    size: 0.5 * unit,
    anchor: 'start',
    ink: 'note',
    weight: 'bold',
  },
]

function titleOf({ pegs, leftward }: StripGeometry): string {
  const [first = 0, last = 0] = [pegs[0], pegs.at(-1)]
  const way = leftward ? 'right to left' : 'left to right'
  return `Pegs ${first + 1} to ${last + 1} seen from the outside, numbered ${way}.`
}
