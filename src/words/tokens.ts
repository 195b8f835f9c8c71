import type { PatternRow } from '../pattern/row'
import type { Heading } from '../loom/direction'
import type { Stitch, Terms } from '../stitches/stitch'
import type { RowText } from './measure'

/**
 * Stitches whose abbreviation is one or two letters take a bare number: k2, ew3, sl2. All others
 * (k2tog, 2/2 LC, yo) are repeated as a group, so that no number can be read as part of a name.
 */
const countedFamilies = ['knit and purl', 'slip'] as const

export function isCounted(stitch: Stitch, terms: Terms): boolean {
  return (
    countedFamilies.some((family) => family === stitch.family) &&
    /^[a-z]{1,2}$/.test(stitch[terms].abbr)
  )
}

export interface Tokens extends RowText {
  /** The different stitches of the row; `stitches` holds indexes into this list. */
  readonly vocabulary: readonly Stitch[]
}

/** The stitches of a row in the order they are worked. */
export function tokensOf({ sites }: PatternRow, heading: Heading, terms: Terms): Tokens {
  const indexes = new Map<Stitch, number>()
  const stitches = new Int32Array(sites.length)
  const last = sites.length - 1
  sites.forEach(({ stitch }, place) => {
    let index = indexes.get(stitch)
    if (index === undefined) indexes.set(stitch, (index = indexes.size))
    stitches[heading === 'forward' ? place : last - place] = index
  })
  const vocabulary = [...indexes.keys()]
  return {
    stitches,
    vocabulary,
    counted: vocabulary.map((stitch) => isCounted(stitch, terms)),
    length: vocabulary.map((stitch) => stitch[terms].abbr.length),
    takes: vocabulary.map((stitch) => stitch.takes),
  }
}
