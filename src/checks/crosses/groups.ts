import { runsRightToLeft, type Direction } from '../../loom/direction'
import { groupsOf } from '../../stitches/crosses'
import type { Cross, Texture } from '../../stitches/stitch'

/** On pegs in rising order. */
const groups = (cross: Cross, direction: Direction, when: 'before' | 'after') =>
  groupsOf(cross, runsRightToLeft(direction), when)

/**
 * The textures that a cross shows, one for each of its columns in rising order: before its groups
 * change places, or after.
 */
export function plainGroups(
  cross: Cross,
  direction: Direction,
  when: 'before' | 'after',
): Texture[] {
  const { front } = groups(cross, direction, when)
  return Array.from({ length: cross.front + cross.back }, (_, peg) =>
    front.includes(peg) ? cross.frontTexture : cross.backTexture,
  )
}

/** How many columns of a cross lie below those of a smaller one inside it: the same loops meet. */
export const columnsBelow = (cross: Cross, smaller: Cross, direction: Direction): number => {
  const meet = (one: Cross): number => {
    const { front, back } = groups(one, direction, 'after')
    return Math.max(front[0] ?? 0, back[0] ?? 0)
  }
  return meet(cross) - meet(smaller)
}
