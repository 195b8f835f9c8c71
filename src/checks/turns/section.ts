import type { Turning } from './turning'

/** A row that turns, in its section. */
export interface TurnRow extends Turning {
  /** 0-based chart row. */
  readonly index: number
  readonly turnPeg: number
  readonly phase: 'narrowing' | 'widening'
  readonly verdict: Verdict
}

/**
 * inside: a narrowing turn that is not inside the last one; short: a widening row that stops before
 * or on the nearest turned peg; skips: one that works more than one turned peg; twice: a turn on a
 * peg that still holds one.
 */
export type Verdict = 'good' | 'inside' | 'short' | 'skips' | 'twice'

/** Rows from the first turn until the loom is back to rows over all the pegs. */
export interface ShortRows {
  readonly from: number
  /** The first full row after it; null when the chart ends before that. */
  readonly closedBy: number | null
  /** Last chart row that belongs to it. */
  readonly to: number
  readonly turns: readonly TurnRow[]
}

type Turnings = readonly (Turning | null)[]

const sections = new WeakMap<Turnings, readonly ShortRows[]>()

/** The short-row sections of a chart. */
export function sectionsOf(turnings: Turnings): readonly ShortRows[] {
  let list = sections.get(turnings)
  if (!list) sections.set(turnings, (list = findSections(turnings)))
  return list
}

function findSections(turnings: Turnings): ShortRows[] {
  const list: ShortRows[] = []
  for (let row = 0; row < turnings.length; row++) {
    if (typeof turnings[row]?.turnPeg !== 'number') continue
    let end = row
    while (end < turnings.length && turnings[end]) end++
    list.push({
      from: row,
      to: end - 1,
      closedBy: end < turnings.length ? end : null,
      turns: judge(turnings, row, end),
    })
    row = end
  }
  return list
}

interface Turned extends Turning {
  readonly index: number
  readonly turnPeg: number
}

/** Is there a turn in this row after strands of earlier turns were worked on the way to it? */
const widens = ({ worked }: Turning): boolean => worked.length > 0

function judge(turnings: Turnings, from: number, end: number): TurnRow[] {
  const turns: Turned[] = []
  // A row cannot run over the join of the round: one that goes on there is told in two rows.
  let onTheWay: readonly number[] = []
  for (let index = from; index < end; index++) {
    const turning = turnings[index]
    if (!turning) continue
    const worked = [...onTheWay, ...turning.worked]
    if (turning.turnPeg === null) {
      onTheWay = worked
      continue
    }
    onTheWay = []
    turns.push({ ...turning, worked, index, turnPeg: turning.turnPeg })
  }
  let phase: TurnRow['phase'] = 'narrowing'
  return turns.map((turn, i): TurnRow => {
    // One row that works a turned peg among rows that go on narrowing is a slip, not the way back.
    const next = turns.slice(i + 1, i + 3)
    const turnsBack = widens(turn)
      ? next.length === 0 || next.some(widens)
      : turn.held && next.length > 0 && next.every(widens)
    if (phase === 'narrowing' && turnsBack) phase = 'widening'
    else if (phase === 'widening' && !widens(turn) && !turn.held && turn.beyond === null)
      phase = 'narrowing'
    return { ...turn, phase, verdict: verdictOf(turn, phase) }
  })
}

function verdictOf({ german, held, worked, faulty }: Turned, phase: TurnRow['phase']): Verdict {
  if (faulty || (worked.length === 0 && held && !german)) return 'twice'
  if (phase === 'narrowing') return worked.length > 0 || held ? 'inside' : 'good'
  if (worked.length === 0) return 'short'
  return worked.length === 1 ? 'good' : 'skips'
}

/** The last turn before this one on the same side. */
export const lastOnSide = ({ turns }: ShortRows, turn: TurnRow): TurnRow | undefined =>
  turns.findLast(({ index, heading }) => index < turn.index && heading === turn.heading)

/** Does this section go back outwards, as a heel or a toe does, and not only shape one side? */
export const isHeel = ({ turns }: ShortRows): boolean =>
  turns.some(({ phase }) => phase === 'widening') &&
  new Set(turns.map(({ heading }) => heading)).size === 2
