import type { Step } from '../../pattern/piece'
import { schedule } from '../../pattern/schedule'
import type { PieceWork, StepWork } from '../../pattern/workPiece'
import type { Fix, Severity } from '../finding'
import { isRound } from '../wording'

/** What is wrong with the piece as a whole. Steps are 0-based. */
export interface PieceFinding {
  /** Stable while the same thing is wrong at the same step: rule, step. */
  readonly id: string
  readonly rule: string
  readonly severity: Severity
  /** null: the whole piece. */
  readonly step: number | null
  /** One sentence: what is wrong, with the numbers in it. */
  readonly message: string
  /** One sentence: what to do. */
  readonly advice: string
  readonly fixes: readonly Fix[]
}

export type PieceNote = Omit<PieceFinding, 'id' | 'rule' | 'severity'>

export interface PieceRule {
  readonly id: string
  readonly title: string
  readonly severity: Severity
  readonly check: (work: PieceWork) => readonly PieceNote[]
}

/** "Step 3 (Heel)". */
export const stepNamed = ({ steps }: PieceWork, index: number): string => {
  const step = steps[index]?.step
  return `Step ${index + 1}${step ? ` (${kindNamed(step)})` : ''}`
}

function kindNamed(step: Step): string {
  switch (step.kind) {
    case 'chart':
      return step.section
    case 'plain':
      return 'plain rows'
    case 'pegs':
      return 'pegs in work'
    default:
      return step.kind
  }
}

/** Which row of its chart, from 1, a row of a step is, and which time it is worked, from 0. */
export function rowOfStep(
  { step, section, rows }: StepWork,
  index: number,
): { readonly number: number; readonly time: number } {
  const times = step.kind === 'chart' && section ? step.times : 1
  const once = Math.max(1, section ? schedule(section.chart).length : (rows?.rows.length ?? 0))
  return times === 1
    ? { number: index + 1, time: 0 }
    : { number: (index % once) + 1, time: Math.floor(index / once) }
}

/** "Round 3 of step 4 (Crown)", as its chart counts them; 0-based in. */
export function rowInStep(work: PieceWork, index: number, row: number): string {
  const step = work.steps[index]
  const number = step ? rowOfStep(step, row).number : row + 1
  return `${unitOf(work, index, row)} ${number} of ${lowerFirst(stepNamed(work, index))}`
}

/** Whole rounds of a ring are rounds; all else is rows (common practice). */
export const unitOf = ({ pattern, steps }: PieceWork, index: number, row = 0): 'Round' | 'Row' => {
  const step = steps[index]
  const run = step?.rows?.rows[row]
  return run && !step.toAndFro && isRound(run, pattern.loom) ? 'Round' : 'Row'
}

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

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
