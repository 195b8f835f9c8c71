import type { Chart, Pattern } from './pattern'
import { timesWorked } from './schedule'

/** Finished size in mm, by the gauge, unstretched; null without a gauge from which one can be told. */
export interface Size {
  /** Round a tube; across a flat piece. */
  readonly width: number
  /** Rows over all the pegs; rows over a part of them do not make it longer. */
  readonly height: number
}

export function sizeOf(chart: Chart, { loom, gauge }: Pattern): Size | null {
  if (!gauge) return null
  const times = timesWorked(chart)
  const whole = chart.rows.reduce((sum, { run }, row) => sum + (run ? 0 : (times[row] ?? 1)), 0)
  const size = { width: (loom.pegs / gauge.stitches) * 100, height: (whole / gauge.rows) * 100 }
  return Number.isFinite(size.width + size.height) ? size : null
}

/** To the millimetre, so that parts come to their whole. Takes mm. */
export const inCentimetres = (mm: number): number => Math.round(mm) / 10

/** "3.6 cm", "24.4 cm": how every length is told, of what is worked. Takes mm. */
export const centimetres = (mm: number): string => `${inCentimetres(mm)} cm`
