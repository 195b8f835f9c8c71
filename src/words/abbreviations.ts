import { headings, type Heading } from '../loom/direction'
import type { PatternRow } from '../pattern/row'
import type { Work } from '../pattern/work'
import type { Stitch, Terms } from '../stitches/stitch'
import { vocabulary } from '../stitches/vocabulary'
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
function usedStitches({ run }: Work): ReadonlyMap<Stitch, ReadonlySet<Heading>> {
  const used = new Map<Stitch, Set<Heading>>()
  for (const { row, heading } of run.rows)
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
export function stepsIn(work: Work, stitch: Stitch, terms: Terms): string {
  return stepsWorked(work, stitch, usedStitches(work).get(stitch) ?? new Set(['forward']), terms)
}

function stepsWorked(
  { run: { habits } }: Work,
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
  const used = usedStitches(work)
  const stitches = vocabulary.flatMap((stitch): Abbreviation[] => {
    const ways = used.get(stitch)
    return ways ? [{ ...stitch[terms], steps: stepsWorked(work, stitch, ways, terms), stitch }] : []
  })
  const ends = new Set(work.run.rows.map(({ row }) => row.end))
  const turns = (['German turn', 'wrap'] as const)
    .filter((end) => ends.has(end))
    .map((end) => ({ ...languages[terms].turnSteps[end], stitch: null }))
  const lines = writeWords(work, terms).lines.map(({ text }) => text)
  const words = (Object.keys(wordSigns) as (keyof typeof wordSigns)[])
    .filter((word) => lines.some((text) => wordSigns[word].test(text)))
    .map((word) => ({ ...languages[terms].abbreviations[word], steps: '', stitch: null }))
  return [...stitches, ...turns, ...words]
}
