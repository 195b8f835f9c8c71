import type { Side } from '../../../loom/state'
import type { Moment } from '../../../loom/walk'
import { closed, mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { Pen, strandInk } from '../band'
import type { AboveGeometry } from './geometry'
import { filled, stroked } from '../../items'

export interface HeldAbove {
  readonly side: Side
  readonly at: Point
  /** One entry per strand, bottom first. */
  readonly strands: readonly (readonly Item[])[]
}

/** The spare needle beside the acting peg, its loops in the order of the pegs they came from. */
export function needleAbove(
  { needle, heading, move }: Moment,
  { unit, at, outward, leftward }: AboveGeometry,
  near: number,
): { readonly loops: readonly HeldAbove[]; readonly items: readonly Item[] } {
  const slots = needle.reduce((sum, { stack }) => sum + Math.max(1, stack.length) + 0.5, 0)
  const slot = 0.34
  const angle = outward(near)
  // Along the needle towards rising pegs.
  const way = leftward ? 1 : -1
  const along: Point = [Math.cos(angle) * way, Math.sin(angle) * way]
  const onward = heading === 'forward' ? 1 : -1
  let place = (-onward * (slots * slot)) / 2
  const taken = move?.do === 'take' ? needle.length - 1 : -1
  const middle = (side: Side): Point => at(near, side === 'inside' ? -1.25 : 1.9)
  const loops = needle.map(({ stack, side }, index): HeldAbove => {
    const centre = middle(side)
    const room = (Math.max(1, stack.length) + 0.5) * slot
    const start = place + (onward * room) / 2
    place += onward * room
    const spot = (shift: number): Point => [
      centre[0] + along[0] * shift * unit,
      centre[1] + along[1] * shift * unit,
    ]
    return {
      side,
      at: spot(start),
      strands: stack.map(({ kind }, level) => {
        const pen = new Pen(unit, strandInk(kind, index === taken), index === taken, 0.024)
        return ring(pen, spot(start + (level - (stack.length - 1) / 2) * slot), along, unit)
      }),
    }
  })
  const items = (['inside', 'outside'] as const).flatMap((side) => {
    const mine = loops.filter((held) => held.side === side)
    if (mine.length === 0) return []
    return [
      ...rod(middle(side), along, (slots * slot) / 2 + 0.5, unit),
      ...mine.flatMap(({ strands }) => strands.flat()),
    ]
  })
  return { loops, items }
}

/** A loop round the needle. */
function ring(pen: Pen, [x, y]: Point, [ax, ay]: Point, unit: number): readonly Item[] {
  const p = (t: number, o: number): string =>
    mm`${x + (t * ax - o * ay) * unit} ${y + (t * ay + o * ax) * unit}`
  const [t, o] = [0.13, 0.3]
  return pen.strand(
    `M${p(0, -o)}C${p(t, -o)} ${p(t, o)} ${p(0, o)}C${p(-t, o)} ${p(-t, -o)} ${p(0, -o)}Z`,
    0.075,
  )
}

function rod([x, y]: Point, [ax, ay]: Point, half: number, unit: number): readonly Item[] {
  const p = (t: number, o: number): Point => [
    x + (t * ax - o * ay) * unit,
    y + (t * ay + o * ax) * unit,
  ]
  const d = closed([
    p(-half, 0),
    p(0.3 - half, -0.09),
    p(half - 0.3, -0.09),
    p(half, 0),
    p(half - 0.3, 0.09),
    p(0.3 - half, 0.09),
  ])
  return [stroked(d, 'frame', 0.05 * unit), filled(d, 'needle')]
}
