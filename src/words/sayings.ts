import { pegsInWork } from '../loom/state'
import { holdsTurn } from '../loom/strand'
import type { Habits } from '../loom/work'
import { changeOf, withChange } from '../pattern/changes'
import type { PatternRun, Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import { writeRow } from './sentence'
import type { Unit } from '../languages/unit'
import { unitOfRow, waitsTurned } from '../pattern/unit'

/** A sentence: one object for all rows of a piece that say it, from version to version. */
export interface Said {
  readonly sentence: string
}

/** What one working of a row says, whatever stands around it. */
export interface Saying {
  readonly said: Said
  readonly kind: Unit
  /** Loops after it, without those that wait on pegs that are not in work. */
  readonly stitches: number
  /**
   * The pegs on which it works the strands of earlier turns as one, 1-based, in a list; empty: none.
   * Such a row is written out where it stands, so that nobody misses them.
   */
  readonly lifts: string
}

/** What every working of a row says, bands unrolled: one entry per pass of the work. */
export interface Sayings {
  readonly work: Work
  readonly terms: Terms
  /** Loops that wait on pegs that are not in work; null for a chart that is told by itself. */
  readonly waiting: number | null
  readonly all: readonly Saying[]
  /** Only what is said, beside `all`: a sentence is looked for by identity, in one flat list. */
  readonly said: readonly Said[]
  readonly known: Map<string, Said>
}

/** Ask the rows what they say; with the sayings of an earlier version, only those worked anew. */
export function sayAll(
  work: Work,
  terms: Terms,
  previous: Sayings | undefined,
  waiting: number | null,
): Sayings {
  const runs = work.run.rows
  const { shape } = work.run.habits
  const known = previous?.known ?? new Map<string, Said>()
  const change = changeOf(runs, previous?.work.run.rows ?? [])

  const sayings: Saying[] = []
  let last = previous?.all[change.from - 1]
  for (let pass = change.from; pass < change.to; pass++) {
    const run = runs[pass] as PatternRun
    const stitches =
      last && keepsCount(run) ? last.stitches : pegsInWork(run.after) - (waiting ?? 0)
    last = say(run, shape, terms, known, stitches, previous?.all[pass])
    sayings.push(last)
  }
  return {
    work,
    terms,
    waiting,
    all: withChange(previous?.all ?? [], change, sayings),
    said: withChange(
      previous?.said ?? [],
      change,
      sayings.map(({ said }) => said),
    ),
    known,
  }
}

/** The saying that stood at the same pass before, if it is still that. */
function say(
  run: PatternRun,
  shape: Habits['shape'],
  terms: Terms,
  known: Map<string, Said>,
  stitches: number,
  before: Saying | undefined,
): Saying {
  const sentence = writeRow(run, shape, terms)
  const kind = unitOfRow(run, shape)
  let said = known.get(sentence)
  if (!said) known.set(sentence, (said = { sentence }))
  const lifts = liftsOf(run)
  return before?.said === said &&
    before.kind === kind &&
    before.stitches === stitches &&
    before.lifts === lifts
    ? before
    : { said, kind, stitches, lifts }
}

function liftsOf({ row: { from, to }, before }: PatternRun): string {
  let lifts = ''
  if (!waitsTurned(before)) return lifts
  for (let peg = from; peg <= to; peg++) {
    const stack = before.stacks[peg]
    if (stack && holdsTurn(stack)) lifts += ` ${peg + 1}`
  }
  return lifts
}

/** Rows of plain stitches, which are most, leave the loops on the pegs they found them on. */
const keepsCount = ({ row, miscount }: PatternRun): boolean =>
  row.steady && row.end === 'on' && !miscount

export const sayTheSame = (a: Saying, b: Saying): boolean =>
  sayNothingNew(a, b) && a.lifts === b.lifts

/** Is a row all told by an earlier one, with no strands of turns that only the later one works? */
export const sayNothingNew = (later: Saying, earlier: Saying): boolean =>
  later.said === earlier.said &&
  later.kind === earlier.kind &&
  (later.lifts === '' || later.lifts === earlier.lifts)
