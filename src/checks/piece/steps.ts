import type { Step } from '../../pattern/piece'
import { schedule } from '../../pattern/schedule'
import { chartWork, firstStepOf, type Work } from '../../pattern/work'
import type { PieceWork, StepWork } from '../../pattern/workPiece'
import type { PieceNote } from '../rule'
import type { Unit } from '../../languages/unit'
import { unitOfRow } from '../../pattern/unit'
import { lowerFirst } from '../../languages/english/forms'

/** A chart where the piece works it first: what is wrong with it there, its own findings say. */
export function firstWork(work: PieceWork, chart: string): Work | null {
  const step = firstStepOf(work.pattern, chart)
  return step === null ? null : chartWork(work, step)
}

/** "Step 3 (Heel)". */
export const stepNamed = (work: PieceWork, index: number): string => {
  const step = work.steps[index]?.step
  return `Step ${index + 1}${step ? ` (${kindNamed(step, unitOf(work, index))})` : ''}`
}

function kindNamed(step: Step, unit: Unit): string {
  switch (step.kind) {
    case 'chart':
      return step.chart
    case 'plain':
      return `plain ${unit}s`
    case 'pegs':
      return 'pegs in work'
    default:
      return step.kind
  }
}

/** Which row of its chart, from 1, a row of a step is, and which time it is worked, from 0. */
export function rowOfStep(
  { step, chart, rows }: StepWork,
  index: number,
): { readonly number: number; readonly time: number } {
  const times = step.kind === 'chart' && chart ? step.times : 1
  const once = Math.max(1, chart ? schedule(chart.chart).length : (rows?.rows.length ?? 0))
  return times === 1
    ? { number: index + 1, time: 0 }
    : { number: (index % once) + 1, time: Math.floor(index / once) }
}

/** "round 3 of step 4 (Crown)", as its chart counts them; 0-based in. */
export function rowInStep(work: PieceWork, index: number, row: number): string {
  const step = work.steps[index]
  const number = step ? rowOfStep(step, row).number : row + 1
  return `${unitOf(work, index, row)} ${number} of ${lowerFirst(stepNamed(work, index))}`
}

/** What a row of a step is called; where it has none, after the way in which it is worked. */
export function unitOf({ pattern, steps }: PieceWork, index: number, row = 0): Unit {
  const step = steps[index]
  const run = step?.rows?.rows[row]
  if (!step || step.toAndFro) return 'row'
  return run ? unitOfRow(run, pattern.loom.shape) : 'round'
}

/** A note for every step that `note` has something to say about. */
export const forSteps = (
  work: PieceWork,
  note: (step: StepWork, index: number) => PieceNote | null,
): readonly PieceNote[] =>
  work.steps.flatMap((step, index) => {
    const noted = note(step, index)
    return noted ? [noted] : []
  })

/** Does the step put a hook into loops: is it more than a note? */
export const works = ({ step }: StepWork): boolean => step.kind !== 'note' && step.kind !== 'pegs'
