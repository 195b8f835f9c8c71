import { pegsInWork } from '../../loom/state'
import { addStep, changeStep } from '../../pattern/edits/piece'
import { counted } from '../wording'
import { forSteps, stepNamed, type PieceRule } from './rule'

/** The loops a step begins with are those the step before it left. */
export const loopsAgree: PieceRule = {
  id: 'piece-loops',
  title: 'Loops do not agree between steps',
  severity: 'error',
  check: (work) =>
    forSteps(work, (step, index) => {
      const rows = step.rows?.rows ?? []
      const row = rows.findIndex(({ miscount }) => miscount)
      const miscount = rows[row]?.miscount
      if (!miscount || pegsInWork(step.before) === 0) return null
      return {
        step: index,
        message: `${stepNamed(work, index)} takes ${counted(miscount.takes, 'loop')} in its row ${row + 1}; ${miscount.loops === 1 ? '1 loop is' : `${miscount.loops} loops are`} there.`,
        advice:
          row === 0
            ? 'Let the step before it end with as many loops, or change its first row.'
            : 'See what its chart says about that row.',
        fixes: [],
      }
    }),
}

/** A chart is worked the way it is drawn: the fabric is the same, but words and arrows are not. */
export const drawnWay: PieceRule = {
  id: 'piece-way',
  title: 'A chart worked the other way than it is drawn',
  severity: 'warning',
  check: (work) =>
    forSteps(work, (step, index) => {
      const { section, rows, toAndFro, pegs } = step
      const first = rows?.rows[0]
      if (step.step.kind !== 'chart' || !section || !first) return null
      if (toAndFro && work.pattern.loom.shape === 'ring') return null
      const drawn = section.chart.rows[0]?.heading ?? 'forward'
      if (first.heading === drawn) return null
      const [from, to] = drawn === 'forward' ? [pegs.from, pegs.to] : [pegs.to, pegs.from]
      return {
        step: index,
        message: `Row 1 of ${stepNamed(work, index).toLowerCase()} is drawn from peg ${from + 1} to peg ${to + 1}, but the work before it leads the other way.`,
        advice: 'Work one row more or one fewer before it: an even number on a bar.',
        fixes: [
          {
            label: 'Knit one row before it',
            edit: (p) => addStep(p, index, { kind: 'plain', stitch: 'k', amount: { rows: 1 } }),
          },
        ],
      }
    }),
}

export const needsGauge: PieceRule = {
  id: 'piece-length',
  title: 'A length without a gauge',
  severity: 'error',
  check: (work) =>
    forSteps(work, ({ step }, index) =>
      step.kind === 'plain' && 'mm' in step.amount && !work.pattern.gauge
        ? {
            step: index,
            message: `${stepNamed(work, index)} is worked for ${Math.round(step.amount.mm) / 10} cm, but the piece has no gauge: how many rows that is cannot be said.`,
            advice: 'Measure a swatch and enter its gauge, or give the number of rows.',
            fixes: [
              {
                label: 'Work 10 rows instead',
                edit: (p) => changeStep(p, index, { ...step, amount: { rows: 10 } }),
              },
            ],
          }
        : null,
    ),
}

export const tooLong: PieceRule = {
  id: 'piece-too-long',
  title: 'More rows than can be worked here',
  severity: 'warning',
  check: (work) =>
    forSteps(work, ({ leftOut }, index) =>
      leftOut > 0
        ? {
            step: index,
            message: `${stepNamed(work, index)} has ${counted(leftOut, 'row')} more than the ${work.rows} rows that a piece can have here; they are not worked.`,
            advice: 'Work its chart fewer times, or give a shorter length.',
            fixes: [],
          }
        : null,
    ),
}
