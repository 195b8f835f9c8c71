/**
 * Values of published standards. Each has a source that can be looked up, or says "common practice" or "from
 * memory": sources.test.ts walks them all.
 */
import type { Sourced } from './sourced'

/** Stitches to 10 cm (4 in) in plain knit. */
export const yarnGauges: Sourced<readonly [class_: number, name: string, range: string][]> = {
  source: 'Craft Yarn Council, Standard Yarn Weight System',
  values: [
    [0, 'lace', '33-40'],
    [1, 'super fine', '27-32'],
    [2, 'fine', '23-26'],
    [3, 'light', '21-24'],
    [4, 'medium', '16-20'],
    [5, 'bulky', '12-15'],
    [6, 'super bulky', '7-11'],
    [7, 'jumbo', '6 and fewer'],
  ],
}

/** Ids of the stitches whose chart symbol the Craft Yarn Council shows as it is drawn here. */
export const councilSigns: Sourced<readonly string[]> = {
  source: 'Craft Yarn Council, chart symbols (www.YarnStandards.com)',
  values: ['k', 'p', 'yo', 'k2tog', 'ssk'],
}

/**
 * Loops of a cross on pegs numbered in working order, worked right to left, held loops inside. Entry i is the old
 * peg, from 1, of the loop that stands on peg i + 1 afterwards.
 */
export const crossOrders: Sourced<readonly [id: string, order: number[]][]> = {
  source: 'common practice',
  values: [
    ['2/1 RC', [2, 3, 1]],
    ['2/1 LC', [3, 1, 2]],
    ['2/2 LC', [3, 4, 1, 2]],
  ],
}

/** A heel in short rows on a loom of 56 pegs: turned, middle and turned pegs. */
export const heelOf56: Sourced<{ loom: number; heel: number; thirds: [number, number, number] }> = {
  source: 'common practice',
  values: { loom: 56, heel: 28, thirds: [9, 10, 9] },
}

/** Turned pegs a side of a wrapped heel, by loom; the heel is half the pegs. */
export const wrappedHeels: Sourced<readonly [loom: number, turned: number][]> = {
  source: 'common practice',
  values: [
    [24, 4],
    [32, 5],
    [36, 6],
    [40, 7],
    [48, 8],
  ],
}

export const wcag = {
  source: 'Web Content Accessibility Guidelines 2.2, level AA (www.w3.org/TR/WCAG22)',
  values: { textContrast: 4.5, graphicsContrast: 3, targetPixels: 24 },
} satisfies Sourced<object>

/** Millimetres. */
export const papers = {
  source: 'ISO 216 (A4, A5); ANSI/ASME Y14.1 (letter)',
  values: { a4: [210, 297], a5: [148, 210], letter: [215.9, 279.4] },
} satisfies Sourced<object>

/**
 * Shoe sizes, mm: EU size = 1.5 x the last in cm; UK child's size = 3 x the last in inches - 12; the last is about
 * 1.5 cm longer than the foot.
 */
export const shoeSizes = {
  source: 'common practice',
  values: {
    parisPoint: 6.67,
    barleycorn: 8.47,
    euSizePerLastCentimetre: 1.5,
    ukChildSizePerLastInch: 3,
    ukChildSizeLess: 12,
    lastLongerThanFoot: 15,
  },
} satisfies Sourced<object>

/** By how much a sock is knitted shorter than the foot, as a share of the foot. */
export const sockEase = {
  source: 'common practice',
  values: { least: 0.05, most: 0.1 },
} satisfies Sourced<object>

/** Round the ball of the foot, as a share of its length. */
export const roundPerLength: Sourced<number> = {
  source: 'Knitty, sizing guidelines (knitty.com, 2023)',
  values: 0.95,
}

/** Months of age, up to; length of the foot in mm. A shoe table whose page was not noted. */
export const infantFeet: Sourced<readonly [months: number, length: number][]> = {
  source: 'from memory',
  values: [
    [3, 93],
    [6, 102],
    [9, 107],
    [12, 115],
    [15, 123],
    [18, 130],
    [21, 137],
    [24, 143],
  ],
}
