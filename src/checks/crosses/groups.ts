import type { Direction } from '../../loom/direction'
import type { Cross, Texture } from '../../stitches/stitch'

const plain: Readonly<Record<Texture, string>> = { knit: 'k', purl: 'p' }

/** Does the front group go to higher pegs? */
const frontGoesUp = ({ lean }: Cross, direction: Direction): boolean =>
  (lean === 'left') === (direction === 'clockwise')

/**
 * The plain stitches that a cross shows, one for each of its columns in rising order: before its groups
 * change places, or after.
 */
export function plainGroups(
  cross: Cross,
  direction: Direction,
  when: 'before' | 'after',
): string[] {
  const front = new Array<string>(cross.front).fill(plain[cross.frontTexture])
  const back = new Array<string>(cross.back).fill(plain[cross.backTexture])
  const frontIsHigh = frontGoesUp(cross, direction) === (when === 'after')
  return frontIsHigh ? [...back, ...front] : [...front, ...back]
}

/** How many columns of a cross lie below those of a smaller one inside it: the same loops meet. */
export const columnsBelow = (cross: Cross, smaller: Cross, direction: Direction): number =>
  frontGoesUp(cross, direction) ? cross.back - smaller.back : cross.front - smaller.front
