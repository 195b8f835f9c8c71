import type { Side } from '../../loom/state'
import type { Moment } from '../../loom/walk'
import { closed, short, type Point } from '../path'
import type { Item } from '../scene'
import { edgeWide, Pen, strandInk, strandWide } from './band'
import type { StripGeometry } from './stripGeometry'

/** One peg's loops on the spare needle, as drawn. */
export interface HeldLoops {
  readonly side: Side
  /** Middle of them, mm. */
  readonly x: number
  /** One entry per strand, bottom first. */
  readonly strands: readonly (readonly Item[])[]
}

export interface HeldNeedle {
  readonly loops: readonly HeldLoops[]
  readonly inside: readonly Item[]
  readonly outside: readonly Item[]
}

/**
 * The spare needle with its loops side by side, in the order of the pegs they came from: those
 * taken first stand where work comes from.
 */
export function needleOnStrip(
  { needle, heading, move }: Moment,
  geometry: StripGeometry,
  near: number,
): HeldNeedle {
  const { unit, leftward, x, xOfGap, width } = geometry
  if (needle.length === 0) return { loops: [], inside: [], outside: [] }
  const wide = needle.map(({ stack }) => Math.max(0.62, 0.3 + stack.length * 0.34))
  const total = wide.reduce((sum, one) => sum + one, 0) * unit
  const middle = x(near) ?? xOfGap(near) ?? width / 2
  const half = total / 2 + 0.5 * unit
  const centre = Math.min(Math.max(middle, half), Math.max(half, width - half))
  const rightFirst = leftward === (heading === 'forward')
  const taken = move?.do === 'take' ? needle.length - 1 : -1
  let from = rightFirst ? centre + total / 2 : centre - total / 2
  const loops = needle.map(({ stack, side }, index): HeldLoops => {
    const room = (wide[index] ?? 0) * unit
    const at = rightFirst ? from - room / 2 : from + room / 2
    from += rightFirst ? -room : room
    const y = geometry.needle[side]
    return {
      side,
      x: at,
      strands: stack.map(({ kind }, level) =>
        hanging(
          new Pen(unit, strandInk(kind, index === taken), index === taken),
          [at + (level - (stack.length - 1) / 2) * 0.36 * unit, y],
          unit,
        ),
      ),
    }
  })
  const onSide = (side: Side): readonly Item[] => {
    const mine = loops.filter((held) => held.side === side)
    if (mine.length === 0) return []
    const y = geometry.needle[side]
    const rod = rodItems([centre - half, centre + half], y, unit)
    const all = mine.flatMap(({ strands }) => strands.flat())
    return [...rod, ...all]
  }
  return { loops, inside: onSide('inside'), outside: onSide('outside') }
}

/** A loop over the needle: it hangs down on both sides of it. */
function hanging(pen: Pen, [x, y]: Point, unit: number): readonly Item[] {
  const p = (dx: number, dy: number): string => `${short(x + dx * unit)} ${short(y + dy * unit)}`
  return pen.strand(
    `M${p(-0.09, 0.52)}C${p(-0.16, 0.2)} ${p(-0.2, -0.22)} ${p(0, -0.22)}C${p(0.2, -0.22)} ${p(0.16, 0.2)} ${p(0.09, 0.52)}`,
    strandWide * 0.6,
  )
}

function rodItems([from, to]: readonly [number, number], y: number, unit: number): readonly Item[] {
  const r = 0.1 * unit
  const d = closed([
    [from, y - r],
    [to - 0.3 * unit, y - r],
    [to, y],
    [to - 0.3 * unit, y + r],
    [from, y + r],
  ])
  return [
    { kind: 'path', d, ink: 'frame', stroke: short(edgeWide * 2 * unit), fill: false },
    { kind: 'path', d, ink: 'needle', stroke: 0, fill: true },
  ]
}
