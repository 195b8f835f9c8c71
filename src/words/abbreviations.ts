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
 * Exactly the abbreviations that the words of this pattern use: its stitches in the order of the
 * vocabulary, then the words rnd, rep and st. The steps of a stitch that is worked both ways are
 * told for each way, if they differ.
 */
export function abbreviations(work: Work, terms: Terms): readonly Abbreviation[] {
  const { habits } = work.run
  const used = usedStitches(work)
  const stitches = vocabulary.flatMap((stitch): Abbreviation[] => {
    const ways = used.get(stitch)
    if (!ways) return []
    const told = headings
      .filter((heading) => ways.has(heading))
      .map((heading) => ({ heading, steps: stepsOfStitch(stitch, habits, heading, terms) }))
    const differ = told.some(({ steps }) => steps !== told[0]?.steps)
    const steps = differ
      ? told.map((one) => `${wayOf(habits, one.heading, terms)}: ${one.steps}`).join(' ')
      : (told[0]?.steps ?? '')
    return [{ ...stitch[terms], steps, stitch }]
  })
  const lines = writeWords(work, terms).lines.map(({ text }) => text)
  const words = (Object.keys(wordSigns) as (keyof typeof wordSigns)[])
    .filter((word) => lines.some((text) => wordSigns[word].test(text)))
    .map((word) => ({ ...languages[terms].abbreviations[word], steps: '', stitch: null }))
  return [...stitches, ...words]
}
