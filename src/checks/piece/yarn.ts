import type { Pattern } from '../../pattern/pattern'
import { withOnBench } from '../../pattern/sections'
import { workPattern, type PatternRun } from '../../pattern/work'
import type { StepWork } from '../../pattern/workPiece'
import { settingOf } from '../setting'
import { gapNamed, pegNumber, upperFirst } from '../wording'
import { forSteps, rowInStep, rowOfStep, stepNamed, type PieceNote, type PieceRule } from './rule'

/** The yarn cannot jump: rows, cast-on and bind-off begin beside it. */
export const yarnReady: PieceRule = {
  id: 'piece-yarn',
  title: 'The yarn is elsewhere',
  severity: 'error',
  check: (work) => {
    const { pattern } = work
    const setting = settingOf(pattern)
    return forSteps(work, (step, index): PieceNote | null => {
      const jump = jumpIn(pattern, step)
      if (!jump) return null
      const { time, number } = rowOfStep(step, jump.row)
      const name = stepNamed(work, index)
      const what = `${number === 1 ? name : upperFirst(rowInStep(work, index, jump.row))} begins`
      const again = time === 0 ? '' : ' when it is worked again'
      return {
        step: index,
        message: `${what} at peg ${pegNumber(jump.peg, setting.pegs)}${again}, but the yarn is ${gapNamed(jump.yarnGap, setting)}.`,
        advice: adviceFor(step, number),
        fixes: [],
      }
    })
  },
}

interface Jump {
  /** Index of the row in its step; 0 for an edge. */
  readonly row: number
  readonly peg: number
  readonly yarnGap: number
}

function jumpIn(pattern: Pattern, step: StepWork): Jump | null {
  const edge = step.edge?.faults.find((fault) => fault.kind === 'start')
  if (edge) return { ...edge, row: 0 }
  const rows = step.rows?.rows ?? []
  let alone: readonly PatternRun[] | null = null
  for (let row = 0; row < rows.length; row++) {
    const fault = startFault(rows[row])
    if (!fault) continue
    // Inside its chart a row may jump in that chart by itself: then the findings of the chart say it.
    const { number } = rowOfStep(step, row)
    if (number > 1 && step.section)
      alone ??= workPattern(withOnBench(pattern, step.section.name)).run.rows
    if (number === 1 || !startFault(alone?.[number - 1])) return { ...fault, row }
  }
  return null
}

const startFault = (run?: PatternRun) => run?.faults.find((fault) => fault.kind === 'start')

function adviceFor({ step: { kind } }: StepWork, number: number): string {
  if (kind === 'cast on' || kind === 'bind off')
    return `Work up to that peg before it, a row more or one fewer, or ${kind} pegs that are beside the yarn.`
  return number === 1
    ? 'End the step before it where this one begins.'
    : 'Look at its chart and the pegs in work: each row begins where the one before it ends.'
}
