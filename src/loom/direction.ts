/**
 * Directions, said once for the whole house.
 *
 * Pegs are numbered from 0 in arrays (from 1 for people) in the order the first round works them.
 * A loom worked clockwise, seen from above, runs right to left in front of the knitter, so peg 1
 * stands at the right of the right side; counterclockwise it runs left to right (common practice).
 */
export const directions = ['clockwise', 'counterclockwise'] as const
export type Direction = (typeof directions)[number]

export const otherDirection = (direction: Direction): Direction =>
  direction === 'clockwise' ? 'counterclockwise' : 'clockwise'

/** Forward: towards higher peg numbers. Back: towards lower ones. */
export const headings = ['forward', 'back'] as const
export type Heading = (typeof headings)[number]

export const opposite = (heading: Heading): Heading => (heading === 'forward' ? 'back' : 'forward')

/** Does a row with this heading run right to left, as the right side is seen? Forward: is peg 1 at the right? */
export const runsRightToLeft = (direction: Direction, heading: Heading = 'forward'): boolean =>
  (direction === 'clockwise') === (heading === 'forward')
