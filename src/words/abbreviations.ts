import { headings, type Heading } from '../loom/direction'
import type { Habits } from '../loom/work'
import { memo } from '../pattern/memo'
import type { PatternRow } from '../pattern/row'
import type { PatternRun, Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import { byVocabulary } from '../stitches/cut'
import { fatesIn, joinFates, type Fates } from './emptied'
import { languages, termOf } from '../languages/languages'
import { stepsOfStitch, wayOf } from './steps'
import { writeWords } from './write'

export interface Abbreviation {
  readonly abbr: string
  readonly name: string
  /** What the hands do; empty for a word that is no stitch. */
  readonly steps: string
  /** null for a word that is no stitch. */
  readonly stitch: Stitch | null
}

const stitchesIn = memo(
  ({ sites }: PatternRow): ReadonlySet<Stitch> => new Set(sites.map(({ stitch }) => stitch)),
)

/** The ways a stitch is worked, each with what becomes of the pegs that it empties. */
type Ways = ReadonlyMap<Heading, readonly Fates[]>

/** The stitches that are worked, and the ways each is worked. */
function usedStitches(runs: readonly PatternRun[]): ReadonlyMap<Stitch, Ways> {
  const used = new Map<Stitch, Map<Heading, Fates[]>>()
  for (const run of runs) {
    const { row, heading } = run
    const fates = fatesIn(run)
    for (const stitch of stitchesIn(row)) {
      let ways = used.get(stitch)
      if (!ways) used.set(stitch, (ways = new Map<Heading, Fates[]>()))
      ways.set(heading, joinFates(ways.get(heading) ?? [], fates.get(stitch) ?? []))
    }
  }
  return used
}

/** What the hands do for a stitch: told once, or for each way it is worked where the moves differ. */
function stepsWorked(habits: Habits, stitch: Stitch, ways: Ways, terms: Terms): string {
  const told = headings
    .filter((heading) => ways.has(heading))
    .map((heading) => ({
      heading,
      steps: stepsOfStitch(stitch, habits, heading, terms, ways.get(heading)),
    }))
  return told.every(({ steps }) => steps === told[0]?.steps)
    ? (told[0]?.steps ?? '')
    : told.map(({ heading, steps }) => `${wayOf(habits, heading, terms)} ${steps}`).join(' ')
}

/**
 * Exactly the abbreviations that the words of this pattern use: its stitches in the order of the
 * vocabulary, then its turns, then the words that the language abbreviates.
 */
export function abbreviations(work: Work, terms: Terms): readonly Abbreviation[] {
  const lines = writeWords(work, terms).lines.map(({ text }) => text)
  return abbreviationsOf(work.run.rows, work.run.habits, lines, terms)
}

/** The same for any rows and the lines that are written of them. */
export function abbreviationsOf(
  runs: readonly PatternRun[],
  habits: Habits,
  lines: readonly string[],
  terms: Terms,
): readonly Abbreviation[] {
  const used = usedStitches(runs)
  const stitches = byVocabulary(used.keys()).map((stitch): Abbreviation => {
    const steps = stepsWorked(habits, stitch, used.get(stitch) ?? new Map(), terms)
    return { ...termOf(stitch, terms), steps, stitch }
  })
  const ends = new Set(runs.map(({ row }) => row.end))
  const turns = (['German turn', 'wrap'] as const)
    .filter((end) => ends.has(end))
    .map((end) => ({ ...languages[terms].turnSteps[end], stitch: null }))
  const words = languages[terms].abbreviations
    .filter(({ shows }) => lines.some((text) => shows.test(text)))
    .map(({ abbr, name }) => ({ abbr, name, steps: '', stitch: null }))
  return [...stitches, ...turns, ...words]
}
