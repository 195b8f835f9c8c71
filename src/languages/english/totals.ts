import type { DialectWords } from '../language'
import type { StitchCount, TotalsPhrases } from '../totals'
import { counted, isOne, rounded } from './forms'

const metres = (yarn: number): string => `${rounded(yarn / 1000)} m`
const grams = (weight: number): string => `${rounded(weight)} g`

/** "2 h 5 min", "1 min" for what takes less. */
function duration(minutes: number): string {
  const whole = Math.max(1, Math.round(minutes))
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  const parts = [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
  return parts.filter(Boolean).join(' ')
}

const ofKind = ({ abbr, loops, times }: StitchCount): string =>
  `${abbr} ${loops}${loops === times ? '' : ` (${counted(times, 'time')})`}`

export const totalsPhrases = ({ gauge }: DialectWords): TotalsPhrases => ({
  stitches: (all, list) => `${counted(all, 'stitch', 'stitches')}: ${list.map(ofKind).join(', ')}.`,
  ofKind,
  yarn: (yarn, weight, forOne) =>
    `About ${metres(yarn)} of yarn${weight === null ? '' : `, ${grams(weight)}`}${forOne ? ', for one: double it for a pair' : ''}.`,
  time: (minutes, pace, forOne) =>
    `About ${duration(minutes)}${forOne ? ' for one' : ''}, at ${rounded(pace)} ${isOne(pace) ? 'stitch' : 'stitches'} a minute.`,
  estimated: `The yarn is estimated from the ${gauge}: allow a little extra.`,
  allForOne: 'These numbers are for one; double them for a pair.',
  metres,
  grams,
  duration,
})
