import type { Pattern } from '../../pattern/pattern'
import type { Totals } from '../../pattern/totals'
import type { Terms } from '../../stitches/stitch'
import { stitchOf } from '../../stitches/vocabulary'
import { languages } from '../languages'

export type TotalsLineKind = 'rows' | 'stitches' | 'moves' | 'yarn' | 'time' | 'assumption'

export interface TotalsLine {
  readonly kind: TotalsLineKind
  readonly text: string
}

/**
 * What a step or the whole piece comes to, a sentence each: rows, stitches by kind, moves, yarn in
 * m and g, time; then what these numbers rest on. What is not known says what is missing.
 */
export function sayTotals(
  totals: Totals,
  pattern: Pattern,
  terms: Terms = pattern.style.terms,
): readonly TotalsLine[] {
  return [
    { kind: 'rows', text: `${count(totals.rows, 'round or row', 'rounds and rows')}.` },
    ...sayStitches(totals, terms),
    { kind: 'moves', text: `${count(totals.moves, 'move', 'moves')} of the hands.` },
    { kind: 'yarn', text: sayYarn(totals, terms) },
    { kind: 'time', text: sayTime(totals, pattern) },
    ...assumptions(totals, pattern, terms).map((text) => ({ kind: 'assumption' as const, text })),
  ]
}

const count = (number: number, one: string, many: string): string =>
  `${number} ${number === 1 ? one : many}`

/** A peg without a loop is no stitch. */
const noStitch = 'none'

function sayStitches({ stitches }: Totals, terms: Terms): TotalsLine[] {
  const list = [...stitches].filter(([id]) => id !== noStitch)
  if (list.length === 0) return []
  const all = list.reduce((sum, [, number]) => sum + number, 0)
  const kinds = list.map(([id, number]) => `${stitchOf(id)[terms].abbr} ${number}`)
  const text = `${count(all, 'stitch', 'stitches')}: ${kinds.join(', ')}.`
  return [{ kind: 'stitches', text }]
}

function sayYarn({ yarn, grams }: Totals, terms: Terms): string {
  if (yarn === null)
    return `Yarn is not reckoned: the pattern has no ${languages[terms].finishing.gauge} yet.`
  const metres = `About ${rounded(yarn / 1000)} m of yarn`
  return grams === null
    ? `${metres}; its weight is not known until a swatch is weighed.`
    : `${metres}, ${rounded(grams)} g.`
}

/** Whole numbers from 10 up, tenths below. */
const rounded = (number: number): number =>
  number >= 10 ? Math.round(number) : Math.round(number * 10) / 10

function sayTime({ minutes }: Totals, { piece: { pace } }: Pattern): string {
  if (minutes === null || pace === null)
    return 'Time is not reckoned: no pace is set (plain stitches that you work in a minute).'
  const whole = Math.max(1, Math.round(minutes))
  const hours = Math.floor(whole / 60)
  const rest = whole % 60
  const time = [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
  return `About ${time.filter(Boolean).join(' ')}, at ${count(rounded(pace), 'stitch', 'stitches')} a minute.`
}

function assumptions({ yarn, grams, minutes }: Totals, pattern: Pattern, terms: Terms): string[] {
  const { swatch, pair } = pattern.piece
  const { gauge } = languages[terms].finishing
  return [
    ...(yarn === null
      ? []
      : [
          `Lengths of yarn are our own reckoning from the ${gauge}, not measured: a flat knit, a true knit and a purl are taken as two stitch widths and two row heights, a u-wrap as a quarter width more, and an e-wrap, which goes round the peg and crosses, as one width more: it takes the most of them. A loop that is moved to another peg, as in a cross, takes as much more as its legs lean.`,
        ]),
    ...(grams === null || !swatch
      ? []
      : [
          `The weight goes by the weighed swatch of ${swatch.stitches} stitches and ${swatch.rows} rows, ${swatch.grams} g.`,
        ]),
    ...(minutes === null
      ? []
      : ['Each move of the hands is taken to last as long as one plain stitch.']),
    ...(pair === 'none' ? [] : ['These numbers are for one; the pair takes twice as much.']),
  ]
}
