import { centimetres } from '../../pattern/size'
import type { Totals } from '../../pattern/totals'
import { unitOfPiece } from '../../pattern/unit'
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
