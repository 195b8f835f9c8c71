import { mirror } from '../pattern/edits/mirror'
import { reverseDirection, whyNotReversed } from '../pattern/edits/turn-round'
import type { Pattern, Sheet } from '../pattern/pattern'

/** Ways to turn the whole piece round, each with a preview. */
export type Turning = 'reverse' | 'mirror'

interface TurningCommand {
  readonly title: string
  /** On the button that does it. */
  readonly act: string
  /** In the history. */
  readonly label: string
  readonly edit: (sheet: Sheet) => Sheet
  /** Why it cannot be done to this piece; null: it can. */
  readonly against: (now: Pattern) => string | null
  /** Said when it is done. */
  readonly said: (then: Pattern, now: Pattern) => string
}

/** The two ways to turn a whole piece round, with all its charts. */
export const turningCommands: Readonly<Record<Turning, TurningCommand>> = {
  reverse: {
    title: 'Reverse the working direction',
    act: 'Reverse the direction',
    label: 'Reverse the working direction',
    edit: reverseDirection,
    against: whyNotReversed,
    said: ({ loom }) => `The loom is now worked ${loom.direction}.`,
  },
  mirror: {
    title: 'Mirror the design',
    act: 'Mirror the design',
    label: 'Mirror the design',
    edit: mirror,
    against: () => null,
    said: ({ loom: { direction } }, { loom }) =>
      `The design is mirrored; the loom is ${direction === loom.direction ? 'still' : 'now'} worked ${direction}.`,
  },
}
