import { together } from '../../pattern/pegs/together'
import { centimetres } from '../../pattern/size'
import type { Totals } from '../../pattern/totals'
import { unitOfPiece } from '../../pattern/unit'
import type { PieceWork } from '../../pattern/workPiece'
import { languages } from '../../languages/languages'

/** "86 rounds, 42 m, 18 g, 2 h, foot 24 cm": as much of it as is known. */
export function totalsInOneLine(
  { yarn, grams, minutes }: Totals,
  work: PieceWork,
  foot: number | null,
): string {
  const { rows, totals: said } = languages[work.pattern.style.terms]
  return [
    rows(together(work).rows, unitOfPiece(work)),
    ...(yarn === null ? [] : [said.metres(yarn)]),
    ...(grams === null ? [] : [said.grams(grams)]),
    ...(minutes === null || minutes === 0 ? [] : [said.duration(minutes)]),
    ...(foot === null ? [] : [`foot ${centimetres(foot)}`]),
  ]
    .map((part) => part.replaceAll(' ', '\u00a0'))
    .join(' · ')
}
