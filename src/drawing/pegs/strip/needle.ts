import type { Side } from '../../../loom/state'
import { mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { smallestReadable, textWidth } from '../../sizes'
import { edgeWide, goneStrand, Pen, strandInk, strandWide } from '../band'
import type { Held } from './doing'
import type { StripGeometry } from './geometry'
import { filled, stroked, written } from '../../items'

/** One peg's loops on the spare needle, as drawn. */
export interface HeldLoops {
  readonly side: Side
  readonly look: Held['look']
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
 * The spare needle, pointed at both ends, with its loops side by side in the order of the pegs they
 * came from: those taken first stand where work comes from. `near`: the peg it is held over, or a
 * place between two. `numbered`: the corner is left to the number of the picture.
 */
export function needleOnStrip(
  needle: readonly Held[],
  rightFirst: boolean,
  geometry: StripGeometry,
  near: number,
  numbered: boolean,
): HeldNeedle {
  const { unit, width } = geometry
  if (needle.length === 0) return { loops: [], inside: [], outside: [] }
  const wide = needle.map(({ stack }) => Math.max(0.62, 0.3 + stack.length * 0.34))
  const total = wide.reduce((sum, one) => sum + one, 0) * unit
  const middle = middleOf(near, geometry)
  const half = total / 2 + 0.55 * unit
  const least = half + (numbered ? 0.75 : 0.1) * unit
  const centre = Math.max(least, Math.min(middle, width - half))
  let from = rightFirst ? centre + total / 2 : centre - total / 2
  const loops = needle.map(({ stack, side, look }, index): HeldLoops => {
    const room = (wide[index] ?? 0) * unit
    const at = rightFirst ? from - room / 2 : from + room / 2
    from += rightFirst ? -room : room
    const y = geometry.needle[side]
    return {
      side,
      look,
      x: at,
      strands: stack.map(({ kind }, level) => {
        const fresh = look === 'taken'
        const spot: Point = [at + (level - (stack.length - 1) / 2) * 0.36 * unit, y]
        return hanging(new Pen(unit, strandInk(kind, fresh), fresh), spot, unit, look === 'gone')
      }),
    }
  })
  const onSide = (side: Side): readonly Item[] => {
    const mine = loops.filter((held) => held.side === side)
    if (mine.length === 0) return []
    const y = geometry.needle[side]
    const all = mine.flatMap(({ strands }) => strands.flat())
    return [
      ...rodItems([centre - half, centre + half], y, unit),
      ...all,
      sideLabel(side, [centre - half, centre + half], geometry),
    ]
  }
  return { loops, inside: onSide('inside'), outside: onSide('outside') }
}

/** The middle between the pegs on both sides of a place; that of a peg where it is one. */
function middleOf(near: number, { x, xOfGap, width }: StripGeometry): number {
  const [one, other] = [x(Math.floor(near)), x(Math.ceil(near))]
  if (one !== undefined && other !== undefined) return (one + other) / 2
  return one ?? other ?? xOfGap(Math.round(near)) ?? width / 2
}

/** On which side of the pegs the needle waits, written beside it, or over it where it fills the width. */
function sideLabel(
  side: Side,
  [left, right]: readonly [number, number],
  { unit, width, needle }: StripGeometry,
): Item {
  const size = Math.max(smallestReadable.text, 0.32 * unit)
  const gap = 0.2 * unit
  const room = textWidth(side, size) + gap
  const onRight = width - right >= room
  const beside = onRight || left >= room
  return written(
    side,
    [
      onRight ? right + gap : beside ? left - gap : width,
      beside ? needle[side] + size * 0.36 : needle[side] - 0.32 * unit,
    ],
    size,
    onRight ? 'start' : 'end',
  )
}

/** A loop over the needle: it hangs down on both sides of it. */
function hanging(pen: Pen, [x, y]: Point, unit: number, isGone: boolean): readonly Item[] {
  const p = (dx: number, dy: number): string => mm`${x + dx * unit} ${y + dy * unit}`
  const d = `M${p(-0.09, 0.52)}C${p(-0.16, 0.2)} ${p(-0.2, -0.22)} ${p(0, -0.22)}C${p(0.2, -0.22)} ${p(0.16, 0.2)} ${p(0.09, 0.52)}`
  return isGone ? goneStrand(pen, d, strandWide * 0.6) : pen.strand(d, strandWide * 0.6)
}

function rodItems([from, to]: readonly [number, number], y: number, unit: number): readonly Item[] {
  const r = 0.1 * unit
  const point = 0.3 * unit
  const d = mm`M${from} ${y}L${from + point} ${y - r}L${to - point} ${y - r}L${to} ${y}L${to - point} ${y + r}L${from + point} ${y + r}Z`
  return [stroked(d, 'frame', edgeWide * 2 * unit), filled(d, 'needle')]
}
