import type { PatternRun } from '../../pattern/work'
import { edgePegs, type PieceWork, type StepWork } from '../../pattern/workPiece'
import { settingOf } from '../setting'
import { gapNamed, pegNumber } from '../wording'
import { endBesideEdge, pegsUpTo, turnAndWorkBack } from './opening'
import { besidesEdge, castOnAgain, reachEdge } from './reach'
import type { PieceNote, PieceRule } from '../rule'
import { firstWork, forSteps, rowInStep, rowOfStep, stepNamed } from './steps'
import { upperFirst } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** The yarn cannot jump: rows, cast-on and bind-off begin beside it. */
export const yarnReady: PieceRule = {
  id: 'piece-yarn',
  title: 'The yarn is elsewhere',
  severity: 'error',
  scope: 'piece',
  check: (work) => {
    const { pattern } = work
    const setting = settingOf(pattern)
    return forSteps(work, (step, index): PieceNote | null => {
      const jump = jumpIn(work, step)
      if (!jump) return null
      const { time, number } = rowOfStep(step, jump.row)
      const name = stepNamed(work, index)
      const what = `${number === 1 ? name : upperFirst(rowInStep(work, index, jump.row))} begins`
      const again = time === 0 ? '' : ' when it is worked again'
      return {
        step: index,
        message: `${what} at peg ${pegNumber(jump.peg, setting.pegs)}${again}, but the yarn is ${gapNamed(jump.yarnGap, setting)}.`,
        ...whatToDo(work, index, number, jump, time > 0),
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

function jumpIn(work: PieceWork, step: StepWork): Jump | null {
  const edge = step.edge?.faults.find((fault) => fault.kind === 'start')
  if (edge) return { ...edge, row: 0 }
  const rows = step.rows?.rows ?? []
  for (let row = 0; row < rows.length; row++) {
    const fault = startFault(rows[row])
    if (!fault) continue
    // A row that jumps inside its chart wherever that is worked: the findings of the chart say it.
    const { number } = rowOfStep(step, row)
    const first = number > 1 && step.chart ? firstWork(work, step.chart.name) : null
    if (number === 1 || !startFault(first?.run.rows[number - 1])) return { ...fault, row }
  }
  return null
}

const startFault = (run?: PatternRun) => run?.faults.find((fault) => fault.kind === 'start')

/** What to do, and what the tool can try of it. */
function whatToDo(
  work: PieceWork,
  index: number,
  number: number,
  { peg, yarnGap }: Jump,
  again: boolean,
): Pick<PieceNote, 'advice' | 'fixes' | 'tries'> {
  const step = work.steps[index] as StepWork
  const { kind } = step.step
  if (kind === 'cast on' || kind === 'bind off') {
    const run = edgePegs({ pegs: step.step.pegs }, step.before)
    const end = endBesideEdge(work, index, run)
    const [first] = besidesEdge(step, run)
    const missing = pegsUpTo(step, run) ?? first
    const upTo = missing.from <= missing.to ? pegsNamed(missing) : 'the pegs up to there'
    const way = end?.label ?? `Put in a step that works ${upTo} before it`
    return {
      advice: `${way}, or ${kind} pegs beside the yarn: ${besideYarn(work, yarnGap)}.`,
      tries: [...(end?.fixes ?? []), ...reachEdge(step, index, run)],
    }
  }
  if (number > 1)
    return {
      advice:
        'Look at its chart and the pegs in work: each row begins where the one before it ends.',
    }
  const back = again ? turnAndWorkBack(work, index) : null
  if (back) return back
  const { length } = step.before.stacks
  const closed = work.pattern.loom.shape === 'ring' && !step.toAndFro
  const rest = { from: yarnGap, to: length - 1 }
  // What else is wrong with its first round is mended together with this.
  const tries = step.rows?.rows[0]?.miscount ? [] : castOnAgain(work, index)
  return {
    advice:
      closed && peg === 0 && yarnGap > 0 && yarnGap < length
        ? `Work ${pegsNamed(rest)} before it, so that the yarn comes to peg 1.`
        : `Work the pegs in between before it, so that the yarn comes to peg ${peg + 1}.`,
    tries,
  }
}

/** "from peg 1 on, or up to peg 32". */
function besideYarn({ pattern: { loom } }: PieceWork, gap: number): string {
  const ring = loom.shape === 'ring'
  const ways = [
    ...(ring || gap < loom.pegs ? [`from peg ${pegNumber(gap, loom.pegs)} on`] : []),
    ...(ring || gap > 0 ? [`up to peg ${pegNumber(gap - 1, loom.pegs)}`] : []),
  ]
  return ways.join(', or ')
}
