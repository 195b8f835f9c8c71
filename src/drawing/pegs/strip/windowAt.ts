import { actingIn } from '../acting'
import type { StripPart } from './window'
import type { Moment } from '../../../loom/walk'
import type { LoomSetup } from '../../../pattern/pattern'

/** A strip is about as high as so many pegs are wide. */
const pegsHigh = 4.8
/** Narrower pegs than this, px, have numbers that are hard to read. */
const leastPeg = 28
const least = 7
const most = 21

/**
 * The pegs that the strip shows. It stands still while work goes on within it, then goes on by half
 * of itself; a stitch is never cut. The room is in px.
 */
export function windowOf(
  moment: Moment,
  { pegs }: Pick<LoomSetup, 'pegs'>,
  { width, height }: { readonly width: number; readonly height: number },
): StripPart {
  const fits = Math.min((width / Math.max(1, height)) * pegsHigh, width / leastPeg)
  const fit = Math.min(most, Math.max(least, Math.floor(fits)))
  const count = Math.min(pegs, fit)
  const { site, move, gap } = moment
  const peg = actingIn(move).peg ?? Math.min(pegs - 1, Math.max(0, gap))
  const stitch = site?.stitch.width ?? 1
  const middle = site ? site.peg + (stitch - 1) / 2 : peg
  const half = Math.max(1, Math.floor(count / 2))
  if (stitch > half) return { centre: Math.round(middle), count }
  return { centre: Math.floor(middle / half) * half + Math.floor((half - 1) / 2), count }
}
