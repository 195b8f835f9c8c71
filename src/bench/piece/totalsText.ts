import { rowsCounted } from '../../drawing/piece/length'
import { centimetres } from '../../pattern/size'
import type { Totals } from '../../pattern/totals'
import type { PieceWork } from '../../pattern/workPiece'

/** Whole numbers from 10 up, tenths below. */
export const rounded = (number: number): string =>
  number >= 10 ? String(Math.round(number)) : String(Math.round(number * 10) / 10)

/** "2 h 5 min". */
export function timeText(minutes: number): string {
  const whole = Math.max(1, Math.round(minutes))
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  const parts = [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
  return parts.filter(Boolean).join(' ')
}

/** What the rows of a piece are called in all: rounds where every one of them goes round (common practice). */
export const unitOfPiece = ({ pattern, steps }: PieceWork): 'round' | 'row' =>
  pattern.loom.shape === 'ring' &&
  steps.every((step) => rowsCounted(step)?.includes('round') ?? true)
    ? 'round'
    : 'row'

/** "86 rounds, 42 m, 18 g, 2 h, foot 24 cm": as much of it as is known. */
export function totalsInOneLine(
  { yarn, grams, minutes }: Totals,
  work: PieceWork,
  foot: number | null,
): string {
  return [
    `${work.rows} ${unitOfPiece(work)}${work.rows === 1 ? '' : 's'}`,
    ...(yarn === null ? [] : [`${rounded(yarn / 1000)} m`]),
    ...(grams === null ? [] : [`${rounded(grams)} g`]),
    ...(minutes === null || minutes === 0 ? [] : [timeText(minutes)]),
    ...(foot === null ? [] : [`foot ${centimetres(foot)}`]),
  ]
    .map((part) => part.replaceAll(' ', '\u00a0'))
    .join(' · ')
}
