import { languages } from '../../../languages/languages'
import type { Terms } from '../../../languages/terms'
import type { Moment } from '../../../loom/walk'
import { emptyStack, type Stack } from '../../../loom/strand'
import type { LoomSetup } from '../../../pattern/pattern'
import { keeper } from '../keep'
import type { Item, Layer, Scene } from '../../scene'
import { actingIn, freshStrands, type Fresh } from '../acting'
import { band, bandGone, levels, post, postItems, type Band, type BandLook } from '../band'
import { doingIn, exchanged, heldIn, leftBare, type Doing, type OneMove } from './doing'
import { keptPeg, type PegLayer } from '../pegLayers'
import { needleOnStrip, type HeldLoops } from './needle'
import { stripGeometry, type StripGeometry, type StripOptions } from './geometry'
import { moveArrows } from './moveArrows'
import { passingLabel } from './passing'
import { rangeMark, rimItems } from './rim'
import { holdingTool, toolAtStrip, toolSide, type HoldingTool } from './tool'
import { yarnLeaves, yarnOnStrip } from './yarn'
import { turnedForward } from '../turnSide'
import type { StripPart } from './window'
import { written } from '../../items'

export interface StripFromFrontOptions extends StripOptions {
  /** The moments that led here, oldest first; the last is the one just before. */
  readonly trail?: readonly Moment[]
  /** Where the spare needle is drawn, as a peg; else at the acting peg. */
  readonly needleAt?: number
  /** Written in the corner. */
  readonly number?: number
  /** Draw the tool and the arrow of the move. */
  readonly withMove?: boolean
  /** In which its words are told. */
  readonly terms?: Terms
  /**
   * The moves of a figure, oldest first; the last leads to the moment drawn. A peg that is worked
   * is drawn while that is done, and the pegs meant have a bracket.
   */
  readonly figure?: readonly OneMove[]
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

/** The layer with the number of a picture. */
export const numberKey = 'number'

const keepGeometry = keeper<StripGeometry>()
const keepRim = keeper<Layer>()

/** A run of pegs as the knitter sees them: from the outside, on the right side of the fabric. */
export function stripFromFront(
  moment: Moment,
  loom: LoomSetup,
  part: StripPart,
  options: StripFromFrontOptions = {},
): StripDrawing {
  const { trail = [], withMove = true, terms = 'us' } = options
  const { passing, pegsFromFront } = languages[terms].drawings
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
  const moments = [...trail, moment]
  const all = withMove ? (options.figure ?? (before ? [{ before, after: moment }] : [])) : []
  // Of moves that are not alike only the last is shown: the others were shown before.
  const steps = new Set(all.map(({ after }) => after.move?.do)).size > 1 ? all.slice(-1) : all
  const last = steps.at(-1)
  const fresh = withMove ? freshIn(moment, steps) : []
  const acting = actingIn(moment.move)
  const rightFirst = leftward === (moment.heading === 'forward')
  const near = options.needleAt ?? acting.peg ?? moment.gap
  const held = needleOnStrip(
    heldIn(moment, steps),
    rightFirst,
    geometry,
    near,
    options.number !== undefined,
  )
  const doing = options.figure && last ? inHand(doingIn(last), moment, geometry) : null
  const yarn = yarnOnStrip(moments, {
    geometry,
    loom,
    held,
    most: options.figure ? 7 : 3,
    heights: (peg) => levels(kindsOf(moment.stacks[peg])),
    through: doing?.isYarn ? { peg: doing.peg, y: doing.heights[doing.stays] ?? 0 } : null,
  })
  const leaves = yarnLeaves(moments, geometry, loom)
  const drawn = (leftward ? pegs.toReversed() : pegs).map((peg) => {
    const highLow = turnedForward(peg, moments) ? -1 : 1
    const look: BandLook = {
      high: (leftward ? -highLow : highLow) as 1 | -1,
      open: leaves?.peg === peg ? leaves.sides : [],
      end: endBeside(peg, geometry),
    }
    if (doing?.peg === peg) return pegInHand(doing, geometry, look)
    return drawPeg(peg, moment.stacks[peg] ?? emptyStack, geometry, fresh, look)
  })
  const onPage = (key: string, items: readonly Item[]): Layer => ({ key, x: 0, y: 0, items })
  const layers: Layer[] = [
    onPage('inside', [...held.inside, ...yarn.behind]),
    ...drawn.map(({ layer }) => layer),
    ...bareLayers(leftBare(moment, steps), geometry),
    keepRim([geometry], () => onPage('rim', rimItems(geometry))),
    onPage('outside', [
      ...(options.figure ? rangeMark(meantBy(options.figure), geometry) : []),
      ...held.outside,
      ...yarn.before,
      ...(last ? passingLabel(steps, yarn.x, geometry, passing) : []),
    ]),
    onPage(
      'move',
      withMove
        ? [
            ...(doing?.tool.before ?? (usesTool(last) ? toolAtStrip(moment, geometry) : [])),
            ...moveArrows(steps, { geometry, held, doing }),
          ]
        : [],
    ),
  ]
  if (options.number !== undefined)
    layers.push(onPage(numberKey, numberItems(options.number, unit)))
  return {
    scene: {
      width,
      height,
      title: pegsFromFront((pegs[0] ?? 0) + 1, (pegs.at(-1) ?? 0) + 1, geometry.leftward),
      layers,
    },
    geometry,
    drawn: {
      pegs: drawn,
      needle: held.loops.filter(({ look }) => look !== 'gone'),
      yarn: yarn.x,
    },
  }
}

/** The side of a peg on which the drawing ends. */
function endBeside(peg: number, { pegs, leftward }: StripGeometry): 1 | 0 | -1 {
  const rightmost = leftward ? pegs[0] : pegs.at(-1)
  const leftmost = leftward ? pegs.at(-1) : pegs[0]
  return peg === rightmost ? 1 : peg === leftmost ? -1 : 0
}

const kindsOf = (stack: Stack = emptyStack) => stack.map(({ kind }) => kind)

/** Loops that were moved one after the other are all new where they are. */
function freshIn(moment: Moment, steps: readonly OneMove[]): readonly Fresh[] {
  const { move } = moment
  const each = move?.do === 'move' || move?.do === 'put' ? steps : steps.slice(-1)
  if (each.length === 0) return [freshStrands(moment) ?? []].flat()
  return each.flatMap(({ before, after }) => freshStrands(after, before) ?? [])
}

/** Of loops that only change places, the hook would hide more than it says. */
const usesTool = (step: OneMove | undefined): boolean =>
  step !== undefined &&
  exchanged(step).length === 0 &&
  !['take', 'put', 'move'].includes(step.after.move?.do ?? '')

/** The pegs at which the moves of a figure are made, once each. */
export const meantBy = (steps: readonly OneMove[]): readonly number[] => [
  ...new Set(steps.flatMap(({ after: { move } }) => actingIn(move).peg ?? [])),
]

interface InHand extends Doing {
  readonly heights: readonly number[]
  readonly tool: HoldingTool
}

/** A peg being worked, with the levels of its strands and the tool that holds them. */
function inHand(doing: Doing | null, moment: Moment, geometry: StripGeometry): InHand | null {
  const at = doing ? geometry.x(doing.peg) : undefined
  if (!doing || at === undefined) return null
  // The arrow down behind the peg needs its room above the strands.
  const most = post.high - (doing.goesOver ? 0.75 : 0.3)
  // Between the old loops and the new one the hook is seen.
  const heights = levels(doing.kinds, most).map((y, level) =>
    doing.hook === 'up' && level < doing.stays ? y + 0.04 : y - (doing.hook === 'up' ? 0.18 : 0),
  )
  const side = toolSide(moment, geometry)
  return {
    ...doing,
    heights,
    tool: holdingTool(doing, heights, [at, geometry.rim], side, geometry),
  }
}

function pegInHand(
  { peg, kinds, heights, stays, isYarn, tool }: InHand,
  geometry: StripGeometry,
  look: BandLook,
): PegLayer<Band> {
  const { unit, rim, x } = geometry
  const bands = kinds.map((kind, level) =>
    band(kind, heights[level] ?? 0, unit, level === stays, look),
  )
  const items = [
    ...bands.flatMap(({ behind }, level) => (isYarn && level === stays ? [] : behind)),
    ...postItems(unit, true),
    ...tool.under,
    ...bands.flatMap(({ before }) => before),
  ]
  return { peg, bands, layer: { key: `peg ${peg + 1}`, x: x(peg) ?? 0, y: rim, items } }
}

/** Where loops were before they were moved or taken off. */
const bareLayers = (bare: ReadonlyMap<number, Stack>, geometry: StripGeometry): readonly Layer[] =>
  [...bare].flatMap(([peg, stack]) => {
    const at = geometry.x(peg)
    const items = levels(kindsOf(stack)).flatMap((y) => bandGone(y, geometry.unit))
    return at === undefined ? [] : [{ key: `left ${peg + 1}`, x: at, y: geometry.rim, items }]
  })

function drawPeg(
  peg: number,
  stack: Stack,
  geometry: StripGeometry,
  fresh: readonly Fresh[],
  look: BandLook,
): PegLayer<Band> {
  const mine = fresh.find((one) => one.peg === peg) ?? null
  const kinds = kindsOf(stack)
  const sided = kinds.some(
    (kind) => kind === 'German turn' || kind === 'yarn over' || kind === 'tuck',
  )
  const key = `${mine ? `${mine.from}-${mine.to}` : ''}${sided ? `/${look.high}/${look.open.join()}/${look.end}` : ''}`
  return keptPeg(geometry, peg, stack, key, () => {
    const { unit, rim, x } = geometry
    const heights = levels(kinds)
    const isFresh = (level: number): boolean =>
      mine !== null && level >= mine.from && level < mine.to
    const bands = kinds.map((kind, level) =>
      band(kind, heights[level] ?? 0, unit, isFresh(level), look),
    )
    const items = [
      ...bands.flatMap(({ behind }) => behind),
      ...postItems(unit, bands.length > 0),
      ...bands.flatMap(({ before }) => before),
    ]
    return { peg, bands, layer: { key: `peg ${peg + 1}`, x: x(peg) ?? 0, y: rim, items } }
  })
}

const numberItems = (number: number, unit: number): readonly Item[] => [
  written(String(number), [0.15 * unit, 0.55 * unit], 0.5 * unit, 'start', 'note', 'bold'),
]
