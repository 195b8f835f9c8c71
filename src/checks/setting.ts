import type { LoomSetup, Pattern } from '../pattern/pattern'
import type { Terms } from '../languages/terms'

/** All that row rules need to know of a pattern besides the row itself. */
export interface Setting extends LoomSetup {
  readonly forBaby: boolean
  readonly longestFloat: number
  readonly longestCross: number
  readonly rowsBetweenCrosses: 'habit' | number
  readonly terms: Terms
}

const known = new Map<string, Setting>()

let last: { readonly pattern: Pattern; readonly setting: Setting } | null = null

/** The same object for the same settings, so that what rows keep can be compared by identity. */
export function settingOf(pattern: Pattern): Setting {
  const before = last?.pattern
  if (
    last &&
    before?.loom === pattern.loom &&
    before.making === pattern.making &&
    before.checks === pattern.checks &&
    before.style === pattern.style
  )
    return last.setting
  const setting = sharedSetting(pattern)
  last = { pattern, setting }
  return setting
}

function sharedSetting({ loom, making, checks, style }: Pattern): Setting {
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
