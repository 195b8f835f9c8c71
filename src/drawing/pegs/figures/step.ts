import type { Terms } from '../../../languages/terms'
import type { Moment } from '../../../loom/walk'
import type { LoomSetup } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import type { Scene } from '../../scene'
import { actingIn } from '../acting'
import { exchanged, type OneMove } from '../strip/doing'
import { stripFromFront, type StripDrawing } from '../strip/strip'
import type { StripPart } from '../strip/window'

export interface StepPictureOptions {
  /** Written in the corner. */
  readonly number?: number
  /** The moments before `before`, oldest first: they make the yarn's path longer. */
  readonly trail?: readonly Moment[]
  /** Pegs to show; else those of the stitch or of the moves, and one on each side. */
  readonly part?: StripPart
  /** Width that a picture should not go beyond, mm. */
  readonly width?: number
  /**
   * Where the figure stands for several moves: the moments that they led to, oldest first; the last
   * is `after`, and `before` is the moment before them all.
   */
  readonly moves?: readonly Moment[]
  readonly terms?: Terms
}

const mostUnit = 8
const mostPegs = 16
/** So many pegs of a longer run are shown, those that come last. */
const mostMeant = 6
const leastPegs = 5

/**
 * A figure for print: the pegs that its moves touch, the loops in a tone, an arrow for each move of
 * loops. Moves of loops are drawn as they end, with dots where the loops were; a peg that is worked
 * is drawn while its old loops are on the hook.
 */
export function stepPicture(
  before: Moment,
  after: Moment,
  loom: LoomSetup,
  options: StepPictureOptions = {},
): StripDrawing {
  const { width = 62, number, trail = [], moves = [after], terms = 'us' } = options
  const figure = stepsOf([before, ...moves])
  const part = options.part ?? partOf(before, after, loom, moves)
  const count = 'count' in part ? part.count : part.to - part.from + 1
  const needle = needleAt(after, moves)
  const held = figure.some(
    (step) =>
      step.before.needle.length + step.after.needle.length > 0 || exchanged(step).length > 0,
  )
  return stripFromFront(after, loom, part, {
    trail: [...trail, before, ...moves.slice(0, -1)],
    figure,
    terms,
    unit: Math.min(mostUnit, width / (count + 0.9)),
    room: { inside: held, outside: false },
    ...(number === undefined ? {} : { number }),
    ...(needle === undefined ? {} : { needleAt: needle }),
  })
}

/** Moves of a list of moments that one figure shows: those that led to moments `first`..`last`. */
export interface FigureMoves {
  readonly first: number
  readonly last: number
}

/** The picture of a figure of a list of moments. The moment before `first` is in the list too. */
export function figurePicture(
  moments: readonly Moment[],
  { first, last }: FigureMoves,
  loom: LoomSetup,
  options: Omit<StepPictureOptions, 'trail' | 'moves'> = {},
): Scene {
  const moves = moments.slice(first, last + 1)
  const [before, after] = [moments[first - 1], moves.at(-1)]
  if (!before || !after)
    throw new RangeError(`No moves ${first} to ${last} among ${moments.length} moments.`)
  const trail = moments.slice(0, first - 1)
  return stepPicture(before, after, loom, { ...options, trail, moves }).scene
}

const stepsOf = (moments: readonly Moment[]): readonly OneMove[] =>
  moments.slice(1).flatMap((after, index) => {
    const before = moments[index]
    return before && after.move ? [{ before, after }] : []
  })

/**
 * The loops wait over the stitch; those of a turn over their peg. The needle is held over the pegs
 * that loops are taken off or put on.
 */
const needleAt = ({ site, move }: Moment, moves: readonly Moment[]): number | undefined => {
  if (move?.do === 'take' || move?.do === 'put') {
    const pegs = moves.flatMap(({ move: one }) => (one?.do === move.do ? [one.peg] : []))
    return (Math.min(...pegs) + Math.max(...pegs)) / 2
  }
  if (move?.do === 'move' && move.under) return move.to
  if (move?.do === 'pass') return move.peg
  return site ? site.peg + Math.floor((site.stitch.width - 1) / 2) : undefined
}

/**
 * The pegs of the stitch and of the moves, and one on each side; five at least. Only moves over the
 * join of a ring show the last peg beside the first.
 */
export function partOf(
  before: Moment,
  after: Moment,
  { pegs, shape }: LoomSetup,
  moves: readonly Moment[] = [after],
): StripPart {
  const list = pegsMeant(before, after, moves, pegs)
  const aim = actingIn(after.move).peg ?? list[0] ?? 0
  let from = Math.min(...list) - 1
  let to = Math.max(...list) + 1
  if (to - from + 1 > mostPegs) return { centre: aim, count: mostPegs }
  while (to - from + 1 < leastPegs) {
    from--
    if (to - from + 1 < leastPegs) to++
  }
  if (to - from + 1 >= pegs) return { from: 0, to: pegs - 1 }
  const overJoin = shape === 'ring' && list.some((peg) => peg < 0 || peg >= pegs)
  if (overJoin) return { from, to }
  const shift = Math.max(0, -from) - Math.max(0, to - pegs + 1)
  return { from: from + shift, to: to + shift }
}

function pegsMeant(
  before: Moment,
  after: Moment,
  moves: readonly Moment[],
  pegs: number,
): readonly number[] {
  const acting = moves.flatMap(({ move }) => actingIn(move).pegs)
  const few = new Set(acting).size <= mostMeant ? acting : acting.slice(-mostMeant)
  const site = after.site as { peg: number; stitch: Pick<Stitch, 'width'> } | null
  const list = [...few]
  if (site) list.push(site.peg, site.peg + site.stitch.width - 1)
  if (list.length === 0) list.push(Math.min(pegs - 1, after.gap), Math.max(0, before.gap - 1))
  return list
}
