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

/** EN 420:2003: hand round and hand length in mm, by glove size. */
export const hands: readonly [size: number, round: number, length: number][] = [
  [6, 152, 160],
  [7, 178, 171],
  [8, 203, 182],
  [9, 229, 192],
  [10, 254, 204],
  [11, 279, 215],
]

/** A published table of shoe sizes: foot length in cm, by age in months. */
export const infantFeet: readonly [from: number, to: number, length: number][] = [
  [0, 3, 9.3],
  [3, 6, 10.2],
  [6, 9, 10.7],
  [9, 12, 11.5],
  [12, 15, 12.3],
  [15, 18, 13.0],
  [18, 21, 13.7],
  [21, 24, 14.3],
]

/** Shoe sizes: Paris point and barleycorn in mm; ISO 9407 gives the foot's length in mm. */
export const shoePoints = { paris: 6.67, barleycorn: 8.47 } as const

/** EN 14682 (to 7 years no cords at hood or neck) and 16 CFR 1120 (waist cord outside, inches). */
export const cords = { noneAtNeckToYears: 7, longestWaistCordInches: 3 } as const
