import { findStitch, stitchOf } from '../../stitches/vocabulary'
import type { Stitch } from '../../stitches/stitch'
import type { StitchItem } from './nodes'

/**
 * What a stitch worked on the wrong side shows on the right side. Published lists pair p2tog with
 * k2tog and ssp with ssk (the column "RS action on a WS needle row" of the usual list of
 * abbreviations): the strand that lies on top does so from both sides, so a lean keeps its name when
 * knit and purl change places. Their purl twins that the vocabulary lacks (pfb, p3tog, m1p) are in
 * `spellings.ts`: worked on the wrong side they show just the knit stitch that they are twins of.
 */
const seenFromRight: Readonly<Record<string, string>> = {
  k: 'p',
  p: 'k',
  ew: 'ptbl',
  ptbl: 'ew',
  uw: 'p',
  fk: 'p',
  tk: 'p',
  k2tog: 'p2tog',
  p2tog: 'k2tog',
  ssk: 'ssp',
  ssp: 'ssk',
  sl: 'sl',
  slf: 'sl',
  tuck: 'tuck',
  yo: 'yo',
  mb: 'mb',
  none: 'none',
}

/** The stitch that the right side shows; null if the vocabulary has none. */
export function fromWrongSide(stitch: Stitch): Stitch | null {
  const { cross } = stitch
  if (!cross) return findStitch(seenFromRight[stitch.id] ?? '') ?? null
  const { front, back, lean, frontTexture, backTexture } = cross
  // The hand of a crossing does not depend on the side that it is seen from, as that of a screw does
  // not: the strand that lies behind leans the other way, and seen from behind it is in front and
  // leans the same way as the front strand did. So the groups change places and swap their
  // textures, and the lean stays.
  const letters = backTexture === 'knit' ? 'PPC' : frontTexture === 'knit' ? 'PC' : 'C'
  return findStitch(`${back}/${front} ${lean === 'left' ? 'L' : 'R'}${letters}`) ?? null
}

/** The same, or the stitch itself where the right side faces or the vocabulary has none. */
export const seen = (stitch: Stitch, fromBehind: boolean): Stitch =>
  fromBehind ? (fromWrongSide(stitch) ?? stitch) : stitch

/** Yarn said to be at the back of a slipped stitch lies in front, as the right side is seen. */
export const itemFromBehind = ({ stitch, atBack, twinOf }: StitchItem): Stitch | null =>
  atBack ? stitchOf('slf') : twinOf ? stitch : fromWrongSide(stitch)
