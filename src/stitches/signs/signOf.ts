import type { Sign, Tradition } from '../sign'
import { wholeOf, type Stitch } from '../stitch'
import { crossSign } from './crosses'

const nothing: Sign = []

/**
 * The sign of a stitch, or of the whole one that it is left of, in cells that are `ratio` times as high as wide.
 */
export function signOf(stitch: Stitch, tradition: Tradition, ratio: number): Sign {
  const { cross, signs } = wholeOf(stitch)
  return cross ? crossSign(cross, tradition, ratio) : (signs?.[tradition] ?? nothing)
}
