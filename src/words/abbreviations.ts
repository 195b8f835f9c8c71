import { headings, type Heading } from '../loom/direction'
import type { Habits } from '../loom/work'
import type { PatternRow } from '../pattern/row'
import type { PatternRun, Work } from '../pattern/work'
import type { Stitch, Terms } from '../stitches/stitch'
import { byVocabulary } from '../stitches/cut'
import { languages } from './languages'
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

const stitchesOf = new WeakMap<PatternRow, ReadonlySet<Stitch>>()

function stitchesIn(row: PatternRow): ReadonlySet<Stitch> {
  let stitches = stitchesOf.get(row)
  if (!stitches) stitchesOf.set(row, (stitches = new Set(row.sites.map(({ stitch }) => stitch))))
  return stitches
}

/** The stitches that are worked, and the ways each is worked. */
function usedStitches(runs: readonly PatternRun[]): ReadonlyMap<Stitch, ReadonlySet<Heading>> {
  const used = new Map<Stitch, Set<Heading>>()
  for (const { row, heading } of runs)
    for (const stitch of stitchesIn(row)) {
      const ways = used.get(stitch)
      if (ways) ways.add(heading)
      else used.set(stitch, new Set([heading]))
    }
  return used
}

/** How each word of the writer shows in a line of its. */
const wordSigns = {
  rnd: /\brnds?\b/i,
  rep: /\brep\b/i,
  st: /\d sts?\b/,
} as const

/**
 * What the hands do for a stitch in this pattern: told once, or for each way it is worked where
 * the moves differ. A stitch that is not used is told for the way of the first row.
 */
export function stepsIn({ run }: Work, stitch: Stitch, terms: Terms): string {
  const ways = usedStitches(run.rows).get(stitch) ?? new Set(['forward'])
  return stepsWorked(run.habits, stitch, ways, terms)
}

function stepsWorked(
  habits: Habits,
  stitch: Stitch,
  ways: ReadonlySet<Heading>,
  terms: Terms,
): string {
  const told = headings
    .filter((heading) => ways.has(heading))
    .map((heading) => ({ heading, steps: stepsOfStitch(stitch, habits, heading, terms) }))
  return told.every(({ steps }) => steps === told[0]?.steps)
    ? (told[0]?.steps ?? '')
    : told.map(({ heading, steps }) => `${wayOf(habits, heading, terms)} ${steps}`).join(' ')
}

/**
 * Exactly the abbreviations that the words of this pattern use: its stitches in the order of the
 * vocabulary, then its turns, then the words rnd, rep and st.
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
    const steps = stepsWorked(habits, stitch, used.get(stitch) ?? new Set(), terms)
    return { ...stitch[terms], steps, stitch }
  })
  const ends = new Set(runs.map(({ row }) => row.end))
  const turns = (['German turn', 'wrap'] as const)
    .filter((end) => ends.has(end))
    .map((end) => ({ ...languages[terms].turnSteps[end], stitch: null }))
  const words = (Object.keys(wordSigns) as (keyof typeof wordSigns)[])
    .filter((word) => lines.some((text) => wordSigns[word].test(text)))
    .map((word) => ({ ...languages[terms].abbreviations[word], steps: '', stitch: null }))
  return [...stitches, ...turns, ...words]
}
