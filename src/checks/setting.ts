import type { LoomSetup, Pattern } from '../pattern/pattern'
import type { Terms } from '../stitches/stitch'

/** All that row rules need to know of a pattern besides the row itself. */
export interface Setting extends LoomSetup {
  readonly forBaby: boolean
  readonly longestFloat: number
  readonly longestCross: number
  readonly rowsBetweenCrosses: 'habit' | number
  readonly terms: Terms
}

const known = new Map<string, Setting>()

/** The same object for the same settings, so that what rows keep can be compared by identity. */
export function settingOf({ loom, making, checks, style }: Pattern): Setting {
  const { shape, pegs, pitch, direction } = loom
  const { longestFloat, longestCross, rowsBetweenCrosses } = checks
  const { forBaby } = making
  const { terms } = style
  const made: Setting = {
    shape,
    pegs,
    pitch,
    direction,
    forBaby,
    longestFloat,
    longestCross,
    rowsBetweenCrosses,
    terms,
  }
  const key = Object.values(made).join('/')
  const found = known.get(key)
  if (found) return found
  known.set(key, made)
  return made
}
