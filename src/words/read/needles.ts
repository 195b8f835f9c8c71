import { findStitch } from '../../stitches/vocabulary'
import type { Stitch } from '../../stitches/stitch'

/**
 * What a stitch worked on the wrong side shows on the right side. Published lists pair p2tog with
 * k2tog and ssp with ssk: the strand that lies on top does so from both sides, so a lean keeps its
 * name when knit and purl change places.
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
  // From behind, the back group is in front; a crossing has the same hand from both sides.
  const letters = backTexture === 'knit' ? 'PPC' : frontTexture === 'knit' ? 'PC' : 'C'
  return findStitch(`${back}/${front} ${lean === 'left' ? 'L' : 'R'}${letters}`) ?? null
}
