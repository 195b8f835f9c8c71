/** Letter sizes and the baseline grid of a booklet. All millimetres. */
export interface TypeScale {
  /** All lines of text stand on multiples of this, counted from the top of the live area. */
  readonly unit: number
  readonly title: number
  readonly heading: number
  readonly text: number
  /** Page number, sheet marks, source lines. */
  readonly small: number
  /** Charts and signs are printed so many times as large as usual, with heavier lines. */
  readonly chart: number
  /** Numbers of rows and pegs beside a chart are at least so high, before they are scaled with it. */
  readonly numbers: number
}

/**
 * The shorter side of chart cells, before they are scaled: never under `least`, where a drawn sign
 * can no longer be told from another (common practice); on several sheets between `comfortable` and
 * `most` so that the sheets are few; under the title only from `good` on. `key`: width of cells in the key.
 */
export const cellSizes = { least: 2.5, comfortable: 3, good: 3.6, most: 6.5, key: 6 } as const

const points = (count: number): number => (count * 25.4) / 72

export const typeScales = {
  usual: {
    unit: 5,
    title: points(28),
    heading: points(13),
    text: points(10.5),
    small: points(8.5),
    chart: 1,
    numbers: points(6.8),
  },
  /** Large print: 22 to 24 point text (common practice for readers with low vision); numbers beside charts 14. */
  large: {
    unit: 10,
    title: points(34),
    heading: points(26),
    text: points(22),
    small: points(18),
    chart: 1.75,
    numbers: points(8),
  },
} as const satisfies Record<string, TypeScale>

export const typeScale = (largePrint: boolean): TypeScale =>
  largePrint ? typeScales.large : typeScales.usual
