/** Values of published standards, the source beside each. */

/** Craft Yarn Council, Standard Yarn Weight System: stitches to 10 cm (4 in) in plain knit. */
export const yarnGauges: readonly [class_: number, name: string, range: string][] = [
  [0, 'lace', '33-40'],
  [1, 'super fine', '27-32'],
  [2, 'fine', '23-26'],
  [3, 'light', '21-24'],
  [4, 'medium', '16-20'],
  [5, 'bulky', '12-15'],
  [6, 'super bulky', '7-11'],
  [7, 'jumbo', '6 and fewer'],
]

/**
 * Two published pages on loom crosses; pegs numbered in working order, worked right to left, held
 * loops inside. Entry i is the old peg, from 1, of the loop that stands on peg i + 1 afterwards.
 */
export const crossOrders: readonly [id: string, order: number[]][] = [
  ['2/1 RC', [2, 3, 1]],
  ['2/1 LC', [3, 1, 2]],
  ['2/2 LC', [3, 4, 1, 2]],
]

/** A published heel in short rows on a loom of 56 pegs: turned, middle and turned pegs. */
export const heelOf56 = { loom: 56, heel: 28, thirds: [9, 10, 9] } as const

/** Common practice: turned pegs a side of a wrapped heel, by loom; the heel is half the pegs. */
export const wrappedHeels: readonly [loom: number, turned: number][] = [
  [24, 4],
  [32, 5],
  [36, 6],
  [40, 7],
  [48, 8],
]

/** Web Content Accessibility Guidelines 2.2, level AA. */
export const wcag = { textContrast: 4.5, graphicsContrast: 3, targetPixels: 24 } as const

/** ISO 216 and ANSI/ASME Y14.1, millimetres. */
export const papers = {
  a4: [210, 297],
  a5: [148, 210],
  letter: [215.9, 279.4],
} as const

/**
 * Feet. EU size = 1.5 x the last in cm; UK child's size = 3 x the last in inches - 12; the last is
 * about 1.5 cm longer than the foot. A Paris point is 6.67 mm, a barleycorn 8.47 mm. Around the foot
 * is about 95 % of its length.
 */
export const feet = {
  parisPoint: 6.67,
  barleycorn: 8.47,
  euSizePerLastCentimetre: 1.5,
  ukChildSizePerLastInch: 3,
  ukChildSizeLess: 12,
  lastLongerThanFoot: 15,
  roundPerLength: 0.95,
} as const

/** Infant foot length (a published shoe table): months of age, up to; length of the foot in mm. */
export const infantFeet: readonly [months: number, length: number][] = [
  [3, 93],
  [6, 102],
  [9, 107],
  [12, 115],
  [15, 123],
  [18, 130],
  [21, 137],
  [24, 143],
]
