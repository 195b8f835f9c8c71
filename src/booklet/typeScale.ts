/** Letter sizes and the baseline grid of a booklet. All millimetres. */
export interface TypeScale {
  /** All lines of text stand on multiples of this, counted from the top of the live area. */
  readonly unit: number
  readonly title: number
  readonly heading: number
  readonly text: number
  /** Page number, sheet marks, source lines. */
  readonly small: number
  /** Numbers beside the chart. */
  readonly chartNumber: number
  /** Chart cells: never smaller than `least`, chosen between `comfortable` and `most`. */
  readonly cell: { readonly least: number; readonly comfortable: number; readonly most: number }
  /** A cell in the key. */
  readonly keyCell: number
}

const points = (count: number): number => (count * 25.4) / 72

/** Under this a drawn sign cannot be told from another (common practice). */
export const leastCell = 2.5

export const typeScales = {
  usual: {
    unit: 5,
    title: points(28),
    heading: points(13),
    text: points(10.5),
    small: points(8.5),
    chartNumber: points(7.5),
    cell: { least: leastCell, comfortable: 3.8, most: 6.5 },
    keyCell: 6,
  },
  /** Large print: 22 to 24 point text (common practice for readers with low vision). */
  large: {
    unit: 10,
    title: points(34),
    heading: points(26),
    text: points(22),
    small: points(18),
    chartNumber: points(14),
    cell: { least: 2 * leastCell, comfortable: 7, most: 11 },
    keyCell: 12,
  },
} as const satisfies Record<string, TypeScale>

export const typeScale = (largePrint: boolean): TypeScale =>
  largePrint ? typeScales.large : typeScales.usual
