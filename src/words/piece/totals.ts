import type { Pattern } from '../../pattern/pattern'
import type { Totals } from '../../pattern/totals'
import { unitOfPiece } from '../../pattern/unit'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { languages, termOf } from '../../languages/languages'
import { counted, isOne, rounded, timeText } from '../../languages/english/forms'

export type TotalsLineKind = 'rows' | 'stitches' | 'yarn' | 'time' | 'assumption'

export interface TotalsLine {
  readonly kind: TotalsLineKind
  readonly text: string
}

/**
 * What a piece comes to, a sentence each: rounds or rows, stitches by kind, yarn in m and g, time; then
 * what a knitter should make of it. What is not known says what is missing.
 */
export function sayTotals(
  totals: Totals,
  work: PieceWork,
  terms: Terms = work.pattern.style.terms,
): readonly TotalsLine[] {
  const { pattern } = work
  const unit = unitOfPiece(work)
  return [
    { kind: 'rows', text: `${counted(totals.rows, unit)}.` },
    ...sayStitches(totals, terms),
    { kind: 'yarn', text: sayYarn(totals, pattern, terms) },
    { kind: 'time', text: sayTime(totals, pattern) },
    ...assumptions(totals, pattern, terms).map((text) => ({ kind: 'assumption' as const, text })),
  ]
}

export interface StitchCount {
  readonly abbr: string
  /** Loops that all of them make. */
  readonly loops: number
  /** How often it is worked. */
  readonly times: number
}

/** The kinds of stitches by the loops they make, most first. A peg without a loop is no stitch. */
export const stitchCounts = ({ stitches, loops }: Totals, terms: Terms): readonly StitchCount[] =>
  [...loops].flatMap(([stitch, made]) =>
    made === 0
      ? []
      : [{ abbr: termOf(stitch, terms).abbr, loops: made, times: stitches.get(stitch) ?? 0 }],
  )

function sayStitches(totals: Totals, terms: Terms): TotalsLine[] {
  const list = stitchCounts(totals, terms)
  if (list.length === 0) return []
  const all = list.reduce((sum, { loops }) => sum + loops, 0)
  const kinds = list.map(
    ({ abbr, loops, times }) =>
      `${abbr} ${loops}${loops === times ? '' : ` (${counted(times, 'time')})`}`,
  )
  const text = `${counted(all, 'stitch', 'stitches')}: ${kinds.join(', ')}.`
  return [{ kind: 'stitches', text }]
}

function sayYarn({ yarn, grams }: Totals, { pair }: Pattern, terms: Terms): string {
  if (yarn === null)
    return `The yarn is not known: the pattern has no ${languages[terms].words.gauge} yet.`
  const metres = `About ${rounded(yarn / 1000)} m of yarn`
  const needed = grams === null ? metres : `${metres}, ${rounded(grams)} g`
  return pair === 'none' ? `${needed}.` : `${needed}, for one: double it for a pair.`
}

function sayTime({ minutes }: Totals, { pace, pair }: Pattern): string {
  if (minutes === null || pace === null)
    return 'The time is not known: no pace is set (plain stitches that you work in a minute).'
  const each = pair === 'none' ? '' : ' for one'
  return `About ${timeText(minutes)}${each}, at ${rounded(pace)} ${isOne(pace) ? 'stitch' : 'stitches'} a minute.`
}

function assumptions({ yarn }: Totals, { pair }: Pattern, terms: Terms): string[] {
  const { gauge } = languages[terms].words
  return [
    // The line of the yarn says itself what it is for.
    ...(yarn !== null
      ? [`The yarn is estimated from the ${gauge}: allow a little extra.`]
      : pair !== 'none'
        ? ['These numbers are for one; double them for a pair.']
        : []),
  ]
}
