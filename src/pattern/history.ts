import type { Pattern } from './pattern'

/** The one current place: chart row and peg, 0-based. */
export interface Spot {
  readonly row: number
  readonly peg: number
}

/** A version of the work: what was done to reach it, and where. */
export interface Version {
  readonly pattern: Pattern
  /** Name of the chart that was looked at before what was done, and after it. */
  readonly from: string
  readonly on: string
  readonly label: string
  readonly spot: Spot
  /** Edits of one gesture (a whole drag) share this and make one step; null for a single edit. */
  readonly gesture: string | null
}

/** Snapshots, unlimited: versions share all they have in common. It knows nothing of edits. */
export interface History {
  readonly past: readonly Version[]
  readonly present: Version
  readonly future: readonly Version[]
  /** Name of the chart that is looked at. */
  readonly on: string
}

export function begin(pattern: Pattern, label = 'Open'): History {
  const on = pattern.charts[0].name
  const spot = { row: 0, peg: 0 }
  return {
    past: [],
    present: { pattern, from: on, on, label, spot, gesture: null },
    future: [],
    on,
  }
}

/** Add a version. Nothing happens when the pattern is the same; a gesture goes on as one step. */
export function add(history: History, version: Version): History {
  const { past, present } = history
  if (version.pattern === present.pattern) return history
  const goesOn = version.gesture !== null && version.gesture === present.gesture
  return {
    past: goesOn ? past : [...past, present],
    present: goesOn ? { ...version, from: present.from } : version,
    future: [],
    on: version.on,
  }
}

/** Another chart is looked at, and nothing of the work changes: there is nothing to take back. */
export const look = (history: History, on: string): History => ({
  ...history,
  present: { ...history.present, gesture: null },
  on,
})

/** Back to the version before; the chart is looked at in which the last thing was done. */
export function undo(history: History): History {
  const last = history.past.at(-1)
  if (!last) return history
  return {
    past: history.past.slice(0, -1),
    present: { ...last, gesture: null },
    future: [history.present, ...history.future],
    on: history.present.from,
  }
}

/** On to the version after, and to the chart in which it was done. */
export function redo(history: History): History {
  const [next, ...future] = history.future
  if (!next) return history
  return {
    past: [...history.past, history.present],
    present: { ...next, gesture: null },
    future,
    on: next.on,
  }
}
