import type { Heading } from './direction'
import type { Loom } from './loom'
import type { Move } from './move'
import type { Site } from './row'
import type { LoomState, Side } from './state'
import type { Stack } from './strand'
import { workRow, type Habits, type RowRun } from './work'

/** The loom between two moves of the hands. Pegs are 0-based. */
export interface Moment {
  /** The move that led here; null before the first one. */
  readonly move: Move | null
  /** The stitch that the move belongs to; null for what belongs to the row or the edge. */
  readonly site: Site | null
  readonly stacks: readonly Stack[]
  /** What waits on the spare needle, first taken first. */
  readonly needle: readonly { readonly stack: Stack; readonly side: Side }[]
  /** The yarn hangs between peg gap-1 and peg gap. */
  readonly gap: number
  readonly heading: Heading
}

/** The moment before anything is done. */
export const firstMoment = (before: LoomState, heading: Heading = before.heading): Moment => ({
  move: null,
  site: null,
  stacks: before.stacks,
  needle: [],
  gap: before.yarn.gap,
  heading,
})

/** A recorder that keeps the loom as it is after every move. */
export function momentsFrom(first: Moment): {
  readonly moments: readonly Moment[]
  readonly record: (move: Move, loom: Loom, site?: Site | null) => void
} {
  const moments = [first]
  return {
    moments,
    record: (move, loom, site = null) =>
      moments.push({
        move,
        site,
        stacks: loom.stacks.slice(),
        needle: loom.needle.slice(),
        gap: loom.gap,
        heading: loom.heading,
      }),
  }
}

/** A row move by move: the moment before it, then one for each move of the hands. */
export function walkRow(
  { before, row, heading }: Pick<RowRun, 'before' | 'row' | 'heading'>,
  habits: Habits,
): readonly Moment[] {
  const { moments, record } = momentsFrom(firstMoment(before, heading))
  workRow(before, row, habits, record)
  return moments
}
