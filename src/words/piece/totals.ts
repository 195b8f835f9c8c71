import type { Totals } from '../../pattern/totals'
import { unitOfPiece } from '../../pattern/unit'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import type { StitchCount } from '../../languages/totals'
import { languages, termOf } from '../../languages/languages'

export type TotalsLineKind = 'rows' | 'stitches' | 'yarn' | 'time' | 'assumption'

export interface TotalsLine {
  readonly kind: TotalsLineKind
  readonly text: string
}

/**
 * What a piece comes to, a sentence each: rounds or rows, stitches by kind, yarn in m and g, time; then
 * what a knitter should make of it. What is not known is left out.
 */
export function sayTotals(
  totals: Totals,
  work: PieceWork,
  terms: Terms = work.pattern.style.terms,
): readonly TotalsLine[] {
  const language = languages[terms]
  const phrases = language.totals
  const { pair, pace } = work.pattern
  const { rows, yarn, grams, minutes } = totals
  const forOne = pair !== 'none'
  const stitches = stitchCounts(totals, terms)
  const all = stitches.reduce((sum, { loops }) => sum + loops, 0)
  // The line of the yarn says itself that it is for one.
  const assumption = yarn !== null ? phrases.estimated : forOne ? phrases.allForOne : null
  const said: Readonly<Record<TotalsLineKind, string | null>> = {
    rows: `${language.rows(rows, unitOfPiece(work))}.`,
    stitches: stitches.length > 0 ? phrases.stitches(all, stitches) : null,
    yarn: yarn === null ? null : phrases.yarn(yarn, grams, forOne),
    time: minutes === null || pace === null ? null : phrases.time(minutes, pace, forOne),
    assumption,
  }
  return (Object.keys(said) as TotalsLineKind[]).flatMap((kind) => {
    const text = said[kind]
    return text === null ? [] : [{ kind, text }]
  })
}

/** The kinds of stitches by the loops they make, most first. A peg without a loop is no stitch. */
export const stitchCounts = ({ stitches, loops }: Totals, terms: Terms): readonly StitchCount[] =>
  [...loops].flatMap(([stitch, made]) =>
    made === 0
      ? []
      : [{ abbr: termOf(stitch, terms).abbr, loops: made, times: stitches.get(stitch) ?? 0 }],
  )
