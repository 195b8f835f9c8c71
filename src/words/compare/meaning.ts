import type { Heading } from '../../loom/direction'
import type { Knit } from '../../loom/move'
import type { PatternRow } from '../../pattern/row'
import type { Stitch } from '../../stitches/stitch'
import { stitchOf, vocabulary } from '../../stitches/vocabulary'
import type { ReadStitch } from '../read/reading'

/**
 * What a row says, as one letter a stitch in working order: rows that mean the same are the same
 * text, whatever words or repeats they are written with.
 */
export type Meaning = string

const explicit: Readonly<Record<Knit, Stitch>> = {
  'e-wrap': stitchOf('ew'),
  'u-wrap': stitchOf('uw'),
  flat: stitchOf('fk'),
  true: stitchOf('tk'),
}
const plain = stitchOf('k')
const letters = new Map(
  vocabulary.map((stitch, index) => [stitch, String.fromCharCode(index + 1)] as const),
)

/** Letters of cut stitches: so many for each stitch of the vocabulary, a letter for each width. */
const firstCut = 0xe000
const widthsOfCut = 8

/** What cuts a stitch is no part of what is worked. */
const letterOfCut = ({ cut, width }: Stitch): string =>
  cut ? String.fromCharCode(firstCut + vocabulary.indexOf(cut.of) * widthsOfCut + width) : '\0'

/** The letter of a stitch; the knit that "knit" means has the letter of plain knit. */
export const letterOf = (stitch: Stitch, knit: Knit): string =>
  letters.get(stitch === explicit[knit] ? plain : stitch) ?? letterOfCut(stitch)

const gap = letterOf(stitchOf('none'), 'e-wrap')

export const holdsGaps = (meaning: Meaning): boolean => meaning.includes(gap)

/** Pegs without a stitch left out: most words never name them. */
export const withoutGaps = (meaning: Meaning): Meaning =>
  holdsGaps(meaning) ? meaning.replaceAll(gap, '') : meaning

export const isGap = (letter: string): boolean => letter === gap

type Known = Partial<Record<string, Meaning>>
const ofWords = new WeakMap<readonly ReadStitch[], Known>()
const ofRows = new WeakMap<PatternRow, Known>()

function remembered<K extends object>(
  store: WeakMap<K, Known>,
  key: K,
  kind: string,
  make: () => Meaning,
): Meaning {
  let known = store.get(key)
  if (!known) store.set(key, (known = {}))
  return (known[kind] ??= make())
}

export const meaningOfWords = (stitches: readonly ReadStitch[], knit: Knit): Meaning =>
  remembered(ofWords, stitches, knit, () => {
    let meaning = ''
    for (const { stitch } of stitches) meaning += letterOf(stitch, knit)
    return meaning
  })

export const meaningOfRow = (row: PatternRow, heading: Heading, knit: Knit): Meaning =>
  remembered(ofRows, row, `${knit}/${heading}`, () => {
    let meaning = ''
    for (const { stitch } of row.sites)
      meaning =
        heading === 'forward' ? meaning + letterOf(stitch, knit) : letterOf(stitch, knit) + meaning
    return meaning
  })

/** Do words and chart row say the same? Words that name no empty peg are not held to them. */
export const meanTheSame = (words: Meaning, row: Meaning): boolean =>
  words === row || (holdsGaps(row) && !holdsGaps(words) && words === withoutGaps(row))
