import type { Heading } from '../../../loom/direction'
import type { Knit } from '../../../loom/move'
import { memo } from '../../../pattern/memo'
import type { PatternRow } from '../../../pattern/row'
import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary as vocabulary } from '../../../stitches/vocabulary'
import type { ReadStitch } from '../../read/reading'

/**
 * What a row says, as one letter a stitch in working order: rows that mean the same are the same
 * text, whatever words or repeats they are written with.
 */
export type Meaning = string

/** Each stitch has as many letters as the widest has pegs: one for itself, the others for what is left of it. */
const letterAt = (place: number, pegs: number): string =>
  String.fromCharCode(1 + place * vocabulary.widest + pegs)

/**
 * The letter of a stitch; the knit that "knit" means has the letter of plain knit. What cuts a stitch is
 * no part of what is worked.
 */
export const letterOf = (stitch: Stitch, knit: Knit): string =>
  letterAt(
    vocabulary.placeOf(stitch.role === knit ? vocabulary.withRole('knit') : stitch),
    stitch.cut ? stitch.width : 0,
  )

const gap = letterOf(vocabulary.withRole('no stitch'), 'e-wrap')

export const holdsGaps = (meaning: Meaning): boolean => meaning.includes(gap)

/** Pegs without a stitch left out: most words never name them. */
export const withoutGaps = (meaning: Meaning): Meaning =>
  holdsGaps(meaning) ? meaning.replaceAll(gap, '') : meaning

export const isGap = (letter: string): boolean => letter === gap

/** What a list of stitches means, by the way it is worked and the knit that is meant. */
const meanings = memo((_: readonly { readonly stitch: Stitch }[]) => new Map<string, Meaning>())

function meaningOf(
  stitches: readonly { readonly stitch: Stitch }[],
  heading: Heading,
  knit: Knit,
): Meaning {
  const known = meanings(stitches)
  const key = `${knit}/${heading}`
  let meaning = known.get(key)
  if (meaning !== undefined) return meaning
  meaning = ''
  for (const { stitch } of stitches)
    meaning =
      heading === 'forward' ? meaning + letterOf(stitch, knit) : letterOf(stitch, knit) + meaning
  known.set(key, meaning)
  return meaning
}

/** Words stand in working order. */
export const meaningOfWords = (stitches: readonly ReadStitch[], knit: Knit): Meaning =>
  meaningOf(stitches, 'forward', knit)

export const meaningOfRow = ({ sites }: PatternRow, heading: Heading, knit: Knit): Meaning =>
  meaningOf(sites, heading, knit)

/** Do words and chart row say the same? Words that name no empty peg are not held to them. */
export const meanTheSame = (words: Meaning, row: Meaning): boolean =>
  words === row || (holdsGaps(row) && !holdsGaps(words) && words === withoutGaps(row))
