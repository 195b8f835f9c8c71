import { mostPegsPassedIn } from '../pattern/floats'
import { memo } from '../pattern/memo'
import type { Chart, Pattern, Row } from '../pattern/pattern'
import { passedEmpty } from '../pattern/pegs/passedEmpty'
import { placed } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import type { PieceWork } from '../pattern/workPiece'
import type { Terms } from '../languages/terms'
import type { Family } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { languages, termOf } from '../languages/languages'

const familiesIn = memo(
  (row: Row): ReadonlySet<Family> => new Set(placed(row).map(({ stitch }) => stitch.family)),
)

/** Which way the work goes. */
export function directionSaid({ loom, style }: Pattern, terms: Terms = style.terms): string {
  const language = languages[terms]
  return language.direction(loom.shape, loom.direction)
}

/**
 * What a knitter must be told before the first round, a sentence each: which way the work goes,
 * what the plain knit is, and the habits for crosses and decreases if there are any in these charts.
 */
export function statements(
  pattern: Pattern,
  charts: readonly Chart[],
  terms: Terms = pattern.style.terms,
): readonly string[] {
  const { making } = pattern
  const language = languages[terms]
  const uses = (family: Family) =>
    charts.some(({ rows }) => rows.some((row) => familiesIn(row).has(family)))
  return [
    directionSaid(pattern, terms),
    language.rightSide,
    language.knitMeans(termOf(standardVocabulary.withRole('knit'), terms).abbr, making.knit),
    ...(uses('cross') ? [language.crossing[making.crossing]] : []),
    ...(uses('decrease') ? [language.transfer[making.transfer]] : []),
  ]
}

/**
 * Cautions to print on things for babies and children; none for other things. `runs` are the rows that
 * are worked: ladders in them are named.
 */
export function cautions(
  pattern: Pattern,
  runs: readonly PatternRun[],
  terms: Terms = pattern.style.terms,
): readonly string[] {
  const { making, checks, loom } = pattern
  if (!making.forBaby) return []
  const setting = { ...loom, forBaby: true, longestFloat: checks.longestFloat }
  const ladders = runs.some((run) => passedEmpty(run, setting).length > 0)
  return languages[terms].cautions(mostPegsPassedIn(pattern), ladders)
}

/** The rows of a whole piece, one after the other. */
export const runsOf = ({ steps }: PieceWork): readonly PatternRun[] =>
  steps.flatMap(({ rows }) => rows?.rows ?? [])
