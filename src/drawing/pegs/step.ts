import type { Moment } from '../../loom/walk'
import type { LoomSetup } from '../../pattern/pattern'
import type { Stitch } from '../../stitches/stitch'
import { actingIn } from './acting'
import { stripFromFront, type StripDrawing } from './strip'
import type { StripPart } from './window'

export interface StepPictureOptions {
  /** Written in the corner. */
  readonly number?: number
  /** The moments before `before`, oldest first: they make the yarn's path longer. */
  readonly trail?: readonly Moment[]
  /** Pegs to show; else those of the stitch or of the move, and one on each side. */
  readonly part?: StripPart
  /** Width that a picture should not go beyond, mm. */
  readonly width?: number
}

const mostUnit = 8
const mostPegs = 16

/** A figure of one move for print: the loom after it, the loops it touched in a tone, its arrow. */
export function stepPicture(
  before: Moment,
  after: Moment,
  loom: LoomSetup,
  options: StepPictureOptions = {},
): StripDrawing {
  const part = options.part ?? partOf(before, after, loom)
  const count = 'count' in part ? part.count : part.to - part.from + 1
  const { width = 62, number, trail = [] } = options
  const held = before.needle.length + after.needle.length > 0
  return stripFromFront(after, loom, part, {
    trail: [...trail, before],
    unit: Math.min(mostUnit, width / (count + 0.9)),
    room: { inside: held, outside: false },
    ...(number === undefined ? {} : { number }),
    ...(needleAt(after) === undefined ? {} : { needleAt: needleAt(after) as number }),
  })
}

const needleAt = ({ site }: Moment): number | undefined =>
  site ? site.peg + Math.floor((site.stitch.width - 1) / 2) : undefined

/** The pegs of the stitch and of the move, and one on each side; five at least. */
export function partOf(before: Moment, after: Moment, { pegs, shape }: LoomSetup): StripPart {
  const acting = actingIn(after.move).pegs
  const site = after.site as { peg: number; stitch: Pick<Stitch, 'width'> } | null
  const list = [...acting]
  if (site) list.push(site.peg, site.peg + site.stitch.width - 1)
  if (list.length === 0) list.push(Math.min(pegs - 1, after.gap), Math.max(0, before.gap - 1))
  let from = Math.min(...list) - 1
  let to = Math.max(...list) + 1
  const aim = actingIn(after.move).peg ?? list[0] ?? 0
  if (to - from + 1 > mostPegs) return { centre: aim, count: mostPegs }
  while (to - from + 1 < 5) {
    from--
    if (to - from + 1 < 5) to++
  }
  if (shape === 'bar') return { from: Math.max(0, from), to: Math.min(pegs - 1, to) }
  if (to - from + 1 >= pegs) return { from: 0, to: pegs - 1 }
  return { from, to }
}
