import type { Move } from '../../loom/move'
import type { Side } from '../../loom/state'
import { stitchAt, type Done } from './context'
import { namePegs } from './pegs'

type DoneOf<D extends Move['do']> = Done<Move & { readonly do: D }>

const loops = (count: number): string => (count === 1 ? 'loop' : 'loops')

/** On which side loops pass those that wait: in front of what waits inside the loom. */
const passing = (side: Side): string => (side === 'inside' ? 'in front of' : 'behind')
const other: Readonly<Record<Side, Side>> = { inside: 'outside', outside: 'inside' }

/** Said of loops that are moved while others wait; else nothing. */
export function movedPast({ before: { needle } }: DoneOf<'move'>): string {
  const side = needle[0]?.side
  return side ? `, passing ${passing(side)} the waiting ${loops(needle.length)}` : ''
}

/** Said of the waiting loops of a cross, which go the other way; else nothing. */
export function putBackPast({ before: { needle }, after: { site } }: DoneOf<'put'>): string {
  const cross = stitchAt(site)?.cross
  const side = needle[0]?.side
  if (!cross || !side) return ''
  const moved = side === 'inside' ? cross.front : cross.back
  return `, passing ${passing(other[side])} the moved ${loops(moved)}`
}

/**
 * Where the yarn hangs beyond the peg that is worked next, since the last group of a cross was
 * worked there before it changed places: where to bring it first. Else nothing.
 */
export function yarnBroughtBack({ move: { peg }, before, after }: DoneOf<'work'>): string {
  const { site, heading } = after
  if (!site || site !== before.site || !stitchAt(site)?.cross) return ''
  const [from, to] = heading === 'forward' ? [peg, before.gap] : [before.gap, peg + 1]
  const within = from >= site.peg && to <= site.peg + site.stitch.width
  if (!within || to <= from) return ''
  const passed = Array.from({ length: to - from }, (_, index) => from + index)
  const pegs = namePegs(heading === 'forward' ? passed.reverse() : passed)
  return `Bring the yarn back behind ${pegs}, inside the loom, ready for peg ${peg + 1}; then `
}
