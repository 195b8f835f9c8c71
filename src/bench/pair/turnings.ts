import { mirror } from '../../pattern/edits/mirror'
import { reverseDirection } from '../../pattern/edits/turn-round'
import type { Pattern } from '../../pattern/pattern'
import type { Edit, Turning } from '../state/bench.svelte'

interface TurningCommand {
  readonly title: string
  /** On the button that does it. */
  readonly act: string
  /** In the history. */
  readonly label: string
  readonly edit: Edit
  /** Said when it is done. */
  readonly said: (then: Pattern) => string
}

/** The two ways to turn a whole piece round, with all its sections. */
export const turningCommands: Readonly<Record<Turning, TurningCommand>> = {
  reverse: {
    title: 'Reverse the working direction',
    act: 'Reverse the direction',
    label: 'Reverse the working direction',
    edit: reverseDirection,
    said: ({ loom }) => `The loom is now worked ${loom.direction}.`,
  },
  mirror: {
    title: 'Mirror the design',
    act: 'Mirror the design',
    label: 'Mirror the design',
    edit: mirror,
    said: ({ loom }) => `The design is mirrored; the loom is still worked ${loom.direction}.`,
  },
}
