import { pegsInWork } from '../../loom/state'
import { addStep, changeStep } from '../../pattern/edits/piece'
import { centimetres } from '../../pattern/size'
import type { Miscount } from '../../loom/gather'
import type { Run } from '../../pattern/pattern'
import { worksBoundOff, type PieceWork, type StepWork } from '../../pattern/workPiece'
import { runsOf } from '../copies'
import { castOnTooFew } from './opening'
import { castOnAgain } from './reach'
import type { PieceRule } from '../rule'
import type { Unit } from '../../languages/unit'
import { firstWork, forSteps, rowInStep, rowOfStep, stepNamed, unitOf } from './steps'
import { counted, listed, needsStitches, upperFirst } from '../../languages/english/forms'

/** The loops a step begins with are those the step before it left. */
export const loopsAgree: PieceRule = {
  id: 'piece-loops',
  title: 'Stitch count is off between steps',
  severity: 'error',
  scope: 'piece',
  check: (work) => {
    const notes = forSteps(work, (step, index) => {
      const rows = step.rows?.rows ?? []
      const row = rows.findIndex(({ miscount }) => miscount)
      const miscount = rows[row]?.miscount
      if (!miscount || pegsInWork(step.before) === 0) return null
      const message = `${upperFirst(rowInStep(work, index, row))} ${needsStitches(miscount.takes, miscount.loops)}.`
      const opening = row === 0 ? castOnTooFew(work, index, message) : null
      if (opening) return opening
      if (!(row === 0 && worksBoundOff(work, index)) && isSaidAtChart(work, step, row, miscount))
        return null
      return {
        step: index,
        message,
        advice:
          row === 0
            ? (castOnFirst(work, index) ?? mustHold(miscount, unitOf(work, index, row)))
            : `Open its chart and look at that ${unitOf(work, index, row)}.`,
        tries: row === 0 ? castOnAgain(work, index) : [],
      }
    })
    // What one cast-on leaves out is said once, however many steps miss it.
    return notes.filter(({ step }, at) => notes.findIndex((note) => note.step === step) === at)
  },
}

/** Where its chart is first worked it is off by the same there: then the findings of the chart say it. */
function isSaidAtChart(
  work: PieceWork,
  step: StepWork,
  row: number,
  { takes, loops }: Miscount,
): boolean {
  if (!step.chart) return false
  const first = firstWork(work, step.chart.name)
  const own = first?.run.rows[rowOfStep(step, row).number - 1]?.miscount
  return own?.takes === takes && own.loops === loops
}

/** How many stitches a step has to find on the loom, and what to do before it so that it does. */
function mustHold({ takes, loops }: Miscount, unit: Unit): string {
  const before =
    takes > loops ? `cast on ${takes - loops}` : `decrease or bind off ${loops - takes}`
  return `The loom must hold ${counted(takes, 'stitch', 'stitches')} here: ${before} before it, or change this ${unit}.`
}

/** Plain rows work every peg: after a thumb is bound off, its pegs are still empty. */
function castOnFirst(work: PieceWork, index: number): string | null {
  const step = work.steps[index]
  if (step?.step.kind !== 'plain') return null
  const { from, to } = step.pegs
  const empty = runsOf(
    step.before.stacks.flatMap(({ length }, peg) =>
      length === 0 && peg >= from && peg <= to ? [peg] : [],
    ),
  )
  if (empty.length === 0) return null
  const one = empty.length === 1 && empty[0]?.from === empty[0]?.to
  const pegs = `${one ? 'peg' : 'pegs'} ${listed(empty.map(pegNumbers))}`
  return `Cast on ${pegs} first, or work these ${unitOf(work, index)}s as a chart that leaves ${one ? 'it' : 'them'} out.`
}

const pegNumbers = ({ from, to }: Run): string =>
  from === to ? `${from + 1}` : `${from + 1}-${to + 1}`

/** A chart is worked the way it is drawn: the fabric is the same, but words and arrows are not. */
export const drawnWay: PieceRule = {
  id: 'piece-way',
  title: 'Chart is worked the other way than drawn',
  severity: 'warning',
  scope: 'piece',
  check: (work) =>
    forSteps(work, (step, index) => {
      const { chart, rows, toAndFro, pegs } = step
      const first = rows?.rows[0]
      if (step.step.kind !== 'chart' || !chart || !first) return null
      if (toAndFro && work.pattern.loom.shape === 'ring') return null
      const drawn = chart.chart.rows[0]?.heading ?? 'forward'
      if (first.heading === drawn) return null
      const [from, to] = drawn === 'forward' ? [pegs.from, pegs.to] : [pegs.to, pegs.from]
      return {
        step: index,
        message: `${upperFirst(rowInStep(work, index, 0))} is drawn from peg ${from + 1} to peg ${to + 1}, but the work before it leads the other way.`,
        advice: 'Work one row more or one fewer before it: an even number on a rake.',
        fixes: [
          {
            label: 'Knit one row before it',
            edit: (p) =>
              addStep(p, index, {
                kind: 'plain',
                stitch: p.vocabulary.withRole('knit'),
                amount: { rows: 1 },
              }),
          },
        ],
      }
    }),
}

export const needsGauge: PieceRule = {
  id: 'piece-length',
  title: 'Length without a gauge',
  severity: 'error',
  scope: 'piece',
  check: (work) =>
    forSteps(work, ({ step }, index) =>
      step.kind === 'plain' && 'mm' in step.amount && !work.pattern.gauge
        ? {
            step: index,
            message: `${stepNamed(work, index)} goes on for ${centimetres(step.amount.mm)}, but without a gauge that is no number of ${unitOf(work, index)}s.`,
            advice: `Knit a swatch and enter its gauge, or give the number of ${unitOf(work, index)}s.`,
            fixes: [
              {
                label: `Work 10 ${unitOf(work, index)}s instead`,
                edit: (p) => changeStep(p, index, { ...step, amount: { rows: 10 } }),
              },
            ],
          }
        : null,
    ),
}

export const tooLong: PieceRule = {
  id: 'piece-too-long',
  title: 'Piece is too long',
  severity: 'warning',
  scope: 'piece',
  check: (work) =>
    forSteps(work, ({ leftOut }, index) =>
      leftOut > 0
        ? {
            step: index,
            message: `${stepNamed(work, index)} goes ${counted(leftOut, unitOf(work, index))} beyond the ${work.rows} that a piece can have; they are left out.`,
            advice: 'Work its chart fewer times, or make it shorter.',
          }
        : null,
    ),
}
