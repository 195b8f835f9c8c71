import type { Heading } from '../../loom/direction'
import type { Row, Run } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { keepsItsLoop, type Stitch } from '../../stitches/stitch'

/** Pegs that all do the same in every row: they rest, or they are worked with one plain stitch. */
export interface QuietPegs extends Run {
  /** Rows that work them, in order; both ends are 0-based rows of the chart. */
  readonly worked: readonly (Run & { readonly stitch: Stitch })[]
  /** Rows in which they rest. */
  readonly rests: readonly Run[]
}

/** What of a chart has to be drawn, 0-based columns, and what can be told in a line instead. */
export interface Drawn extends Run {
  readonly quiet: readonly QuietPegs[]
}

/** Fewer pegs than this are drawn: a line about them would take as much room. */
const fewest = 6
/** Quiet columns that stay beside what is drawn, so that it does not seem to end there. */
const kept = 1

/**
 * A heel works a part of the loom, and the rest of its chart is empty: the columns that are to be
 * drawn, and the pegs beside them that rest in some rows and are plain in all others. Null where all is
 * to be drawn.
 */
export function withoutQuietPegs({ pattern: { loom }, chart, firstRuns }: Work): Drawn | null {
  const { rows, columns, repeat } = chart
  if (repeat || columns !== loom.pegs || rows.every(({ run }) => run === null)) return null
  const states = Array.from({ length: columns }, (_, column) =>
    rows.map((row, index) => stateOf(row, column, firstRuns[index]?.heading ?? 'forward')),
  )
  const isQuiet = (column: number, like: number): boolean =>
    (states[column] ?? []).every((state, row) => state !== null && state === states[like]?.[row])
  let first = 0
  while (first < columns && isQuiet(first, 0)) first++
  let last = columns - 1
  while (last >= 0 && isQuiet(last, columns - 1)) last--
  if (first > last) return null
  const before = first - kept >= fewest ? { from: 0, to: first - kept - 1 } : null
  const after =
    columns - 1 - last - kept >= fewest ? { from: last + kept + 1, to: columns - 1 } : null
  const quiet = [before, after].flatMap((run) => (run ? told(run, states[run.from] ?? []) : []))
  if (quiet.length === 0) return null
  return {
    from: before ? before.to + 1 : 0,
    to: after ? after.from - 1 : columns - 1,
    quiet,
  }
}

const resting = 'rests'
type State = Stitch | typeof resting

/** The stitch that a column has in a row, `resting` where it has none; null: to be drawn. */
function stateOf({ cells, run, end }: Row, column: number, heading: Heading): State | null {
  const [from, to] = run ? [run.from, run.to] : [0, cells.length - 1]
  if (column < from || column > to) return resting
  const isEnd = end !== 'on' && column === (heading === 'forward' ? to : from)
  const stitch = cells[column]
  return !isEnd && stitch && keepsItsLoop(stitch) ? stitch : null
}

function told(run: Run, states: readonly (State | null)[]): QuietPegs[] {
  const stretches: { from: number; to: number; state: State }[] = []
  states.forEach((state, row) => {
    const last = stretches.at(-1)
    if (last && last.state === state) last.to = row
    else stretches.push({ from: row, to: row, state: state ?? resting })
  })
  const rests = stretches.flatMap(({ state, ...rows }) => (state === resting ? [rows] : []))
  const worked = stretches.flatMap(({ state, ...rows }) =>
    state === resting ? [] : [{ ...rows, stitch: state }],
  )
  return rests.length === 0 ? [] : [{ ...run, rests, worked }]
}
