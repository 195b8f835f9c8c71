import { languages } from '../../../languages/languages'
import type { Terms } from '../../../languages/terms'
import type { Moment } from '../../../loom/walk'
import { emptyStack, type Stack } from '../../../loom/strand'
import type { LoomSetup } from '../../../pattern/pattern'
import { keeper } from '../keep'
import { circlePath } from '../../path'
import type { Item, Layer, Scene } from '../../scene'
import { actingIn, freshStrands, type Fresh } from '../acting'
import { bandsAbove, type BandAbove } from './band'
import { aboveGeometry, type AboveGeometry, type AboveOptions } from './geometry'
import { headingArrow, moveArrowAbove, toolAbove } from './hands'
import { loomItems } from './loom'
import { needleAbove, type HeldAbove } from './needle'
import { yarnAbove } from './yarn'
import { keptPeg, type PegLayer } from '../pegLayers'
import { turnedForward } from '../turnSide'
import { filled, stroked } from '../../items'

export interface LoomFromAboveOptions extends AboveOptions {
  /** The moments that led here, oldest first; the last is the one just before. */
  readonly trail?: readonly Moment[]
  /** Draw the tool and the arrow of the move. */
  readonly withMove?: boolean
  /** In which its title is told. */
  readonly terms?: Terms
}

export interface LoomDrawing {
  readonly scene: Scene
  readonly geometry: AboveGeometry
  readonly drawn: {
    /** In peg order: a band for each strand, bottom to top. */
    readonly pegs: readonly PegLayer<BandAbove>[]
    /** First taken first. */
    readonly needle: readonly HeldAbove[]
    /** Where the yarn leaves the loom, mm. */
    readonly yarn: readonly [x: number, y: number]
  }
}

const keepGeometry = keeper<AboveGeometry>()
const keepLoom = keeper<Layer>()

/** The ring or bar of pegs from above: loops on pegs, spare needle, yarn and tool. */
export function loomFromAbove(
  moment: Moment,
  loom: LoomSetup,
  options: LoomFromAboveOptions = {},
): LoomDrawing {
  const { trail = [], withMove = true, width, front, terms = 'us' } = options
  const { shape, pegs, direction } = loom
  const geometry = keepGeometry([shape, pegs, direction, width, front], () =>
    aboveGeometry(loom, options),
  )
  const before = trail.at(-1)
  const fresh = withMove ? freshStrands(moment, before) : null
  const moments = [...trail, moment]
  const drawn = Array.from({ length: pegs }, (_, peg) =>
    pegFromAbove(peg, moment.stacks[peg] ?? emptyStack, geometry, fresh, moments),
  )
  const acting = actingIn(moment.move)
  const held = needleAbove(moment, geometry, acting.peg ?? moment.gap - 0.5)
  const yarn = yarnAbove(moments, geometry)
  const onPage = (key: string, items: readonly Item[]): Layer => ({ key, x: 0, y: 0, items })
  const hands = withMove
    ? [
        ...(acting.peg === null ? [] : [workingPeg(geometry, acting.peg)]),
        ...toolAbove(moment, geometry),
        ...moveArrowAbove(moment, geometry, before),
      ]
    : []
  return {
    scene: {
      width: geometry.width,
      height: geometry.height,
      title: languages[terms].drawings.loomFromAbove(loom),
      layers: [
        keepLoom([geometry], () => onPage('loom', loomItems(geometry))),
        onPage('inside', yarn.inside),
        ...drawn.map(({ layer }) => layer),
        onPage('outside', [...held.items, ...yarn.outside, ...headingArrow(moment, geometry)]),
        onPage('move', hands),
      ],
    },
    geometry,
    drawn: { pegs: drawn, needle: held.loops, yarn: yarn.place },
  }
}

function pegFromAbove(
  peg: number,
  stack: Stack,
  geometry: AboveGeometry,
  fresh: Fresh | null,
  moments: readonly Moment[],
): PegLayer<BandAbove> {
  const mine = fresh?.peg === peg ? fresh : null
  // Along the peg's own way, which on a loom that runs left is that of rising pegs.
  const isTurned = stack.some(({ kind }) => kind === 'German turn')
  const high = isTurned && turnedForward(peg, moments) === geometry.leftward ? -1 : 1
  const key = `${mine ? `${mine.from}-${mine.to}` : ''}${isTurned ? `/${high}` : ''}`
  return keptPeg(geometry, peg, stack, key, () => {
    const { unit, pegRadius } = geometry
    const isFresh = (level: number): boolean =>
      mine !== null && level >= mine.from && level < mine.to
    const bands = bandsAbove(
      stack.map(({ kind }) => kind),
      unit,
      geometry.outward(peg),
      isFresh,
      high,
    )
    const [x, y] = geometry.peg(peg)
    const items = [
      ...bands.toReversed().flatMap((band) => band.items),
      ...pegItems(stack.length > 0, pegRadius),
    ]
    return { peg, bands, layer: { key: `peg ${peg + 1}`, x, y, items } }
  })
}

/** A peg in work is a full disc, an empty one a smaller ring with a dot. */
function pegItems(inWork: boolean, r: number): readonly Item[] {
  const d = circlePath([0, 0], inWork ? r : r * 0.75)
  return [
    filled(d, inWork ? 'peg' : 'ground'),
    stroked(d, 'frame', r * (inWork ? 0.22 : 0.14)),
    ...(inWork ? [] : [filled(circlePath([0, 0], r * 0.16), 'frame')]),
  ]
}

const workingPeg = ({ unit, peg }: AboveGeometry, at: number): Item =>
  stroked(circlePath(peg(at), 0.56 * unit), 'place', Math.max(0.2, 0.06 * unit))
