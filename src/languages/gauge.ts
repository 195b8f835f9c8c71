/** Stitches and rows in 100 mm of the designer's own swatch. */
export interface Gauge {
  readonly stitches: number
  readonly rows: number
}
