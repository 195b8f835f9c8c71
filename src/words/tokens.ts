import type { PatternRow } from '../pattern/row'
import type { Heading } from '../loom/direction'
import type { Site } from '../loom/row'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import type { RowText } from './measure'
import { termOf } from '../languages/languages'

/**
 * Stitches whose abbreviation is one or two letters take a bare number: k2, ew3, sl2. All others
 * (k2tog, 2/2 LC, yo) are repeated as a group, so that no number can be read as part of a name.
 */
const countedFamilies = ['knit and purl', 'slip'] as const

export function isCounted(stitch: Stitch, terms: Terms): boolean {
  return (
    countedFamilies.some((family) => family === stitch.family) &&
    /^[a-z]{1,2}$/.test(termOf(stitch, terms).abbr)
  )
}

export interface Tokens extends RowText {
  /** The different stitches of the row; `stitches` holds indexes into this list. */
  readonly vocabulary: readonly Stitch[]
}

/** The stitches of a row in the order they are worked. */
export function tokensOf({ sites }: PatternRow, heading: Heading, terms: Terms): Tokens {
  const vocabulary: Stitch[] = []
  const stitches = new Int32Array(sites.length)
  const last = sites.length - 1
  for (let place = 0; place <= last; place++) {
    const { stitch } = sites[place] as Site<Stitch>
    // A row has few different stitches, so looking along the list is fastest.
    let index = vocabulary.indexOf(stitch)
    if (index < 0) index = vocabulary.push(stitch) - 1
    stitches[heading === 'forward' ? place : last - place] = index
  }
  return {
    stitches,
    vocabulary,
    counted: vocabulary.map((stitch) => isCounted(stitch, terms)),
    length: vocabulary.map((stitch) => termOf(stitch, terms).abbr.length),
    takes: vocabulary.map((stitch) => stitch.takes),
  }
}
