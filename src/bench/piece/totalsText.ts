import { centimetres } from '../../pattern/size'
import type { Totals } from '../../pattern/totals'
import { unitOfPiece } from '../../pattern/unit'
import type { PieceWork } from '../../pattern/workPiece'
import { rounded, timeText } from '../../languages/english/forms'

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
