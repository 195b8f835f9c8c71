import type { Pattern } from './pattern'
import { schedule } from './schedule'

/** Finished size in mm, by the gauge, unstretched; null without a gauge. */
export interface Size {
  /** Round a tube; across a flat piece. */
  readonly width: number
  /** Rows over all the pegs; rows over a part of them do not make it longer. */
  readonly height: number
}

export function sizeOf({ chart, loom, gauge }: Pattern): Size | null {
  if (!gauge) return null
  const whole = schedule(chart).filter(({ row }) => chart.rows[row]?.run === null).length
  return { width: (loom.pegs / gauge.stitches) * 100, height: (whole / gauge.rows) * 100 }
}
