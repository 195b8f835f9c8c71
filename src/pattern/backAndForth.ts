import type { LoomSetup, Pattern } from './pattern'
import type { Step } from './piece'

/** Is work back and forth after this step? On a rake always; a run of pegs always is. */
export const turnsBack = (
  { shape }: Pick<LoomSetup, 'shape'>,
  step: Extract<Step, { kind: 'pegs' }>,
): boolean => shape === 'bar' || step.toAndFro || step.run !== null

/** Is the chart of this name worked back and forth by every step that works it? No without one. */
export function isBackAndForth({ loom, steps }: Pattern, chart: string): boolean {
  let now = loom.shape === 'bar'
  let used = false
  for (const step of steps) {
    if (step.kind === 'pegs') now = turnsBack(loom, step)
    if (step.kind !== 'chart' || step.chart !== chart) continue
    if (!now) return false
    used = true
  }
  return used
}
