/** Stitches and rows to 10 cm. */
export interface Gauge {
  readonly stitches: number
  readonly rows: number
}
