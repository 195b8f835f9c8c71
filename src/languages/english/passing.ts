import type { Side } from '../../loom/state'
import { stitchAt, type DoneOf } from '../hands'

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
