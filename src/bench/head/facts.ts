import { lengthOfPiece } from '../../drawing/piece/length'
import { centimetres, sizeOf } from '../../pattern/size'
import { chartOn } from '../../pattern/charts'
import type { Pattern } from '../../pattern/pattern'
import { languages } from '../../languages/languages'
import type { PieceState } from '../state/piece.svelte'

/** "36-peg ring", "16.4 cm round", "15.2 cm high", "30 m": as much of it as is known. */
export function pieceFacts({ work, slices, totals }: PieceState): readonly string[] {
  const { pattern } = work
  const { loom, style } = pattern
  const isRing = loom.shape === 'ring'
  const size = sizeOf(chartOn(pattern), pattern)
  const height = lengthOfPiece(slices)
  const { yarn } = totals.whole
  return [
    `${loom.pegs}-peg ${isRing ? 'ring' : 'rake'}`,
    ...(size ? [`${centimetres(size.width)} ${isRing ? 'round' : 'wide'}`] : ['no gauge yet']),
    ...(size && height > 0 ? [`${centimetres(height)} high`] : []),
    ...(yarn === null ? [] : [languages[style.terms].totals.metres(yarn)]),
  ]
}

/** The loom in one line: "Round loom, 36 pegs, 9.5 mm · clockwise · k = u-wrap knit · 22 sts × 31 rows in 10 cm". */
export const loomFacts = ({ loom, making, gauge }: Pattern): string =>
  [
    `${loom.shape === 'ring' ? 'Round loom' : 'Rake'}, ${loom.pegs} pegs, ${loom.pitch} mm`,
    loom.direction,
    `k = ${making.knit} knit`.replace(' knit knit', ' knit'),
    gauge ? `${gauge.stitches} sts × ${gauge.rows} rows in 10 cm` : 'no gauge yet',
  ].join(' · ')
