import { pegsInWork } from '../../loom/state'
import { addStep, moveStep, removeChart, removeStep } from '../../pattern/edits/piece'
import { toeBefore } from '../../pattern/pegs/fold'
import type { Pattern } from '../../pattern/pattern'
import { chartsInOrder } from '../../pattern/charts'
import { edgePegs, loopsLeft } from '../../pattern/workPiece'
import type { PieceRule } from '../rule'
import { forSteps, stepNamed, works } from './steps'
import { counted, lowerFirst } from '../../languages/english/forms'

export const castOnFirst: PieceRule = {
  id: 'piece-cast-on',
  title: 'Nothing is cast on',
  severity: 'error',
  scope: 'piece',
  check: (work) => {
    const isBare = (index: number): boolean => {
      const step = work.steps[index]
      return (
        step !== undefined &&
        works(step) &&
        step.step.kind !== 'cast on' &&
        pegsInWork(step.before) === 0
      )
    }
    return forSteps(work, (_, index) => {
      const before = work.steps.slice(0, index).findLastIndex(works)
      // What follows from it is not said again.
      if (!isBare(index) || isBare(before)) return null
      const castOn = (where: string) => ({
        label: `Cast on all pegs before ${where}`,
        edit: (p: Pattern) => addStep(p, index, { kind: 'cast on', how: 'e-wrap', pegs: null }),
      })
      if (work.steps[before]?.step.kind !== 'bind off')
        return {
          step: index,
          message: `${stepNamed(work, index)} begins on an empty loom.`,
          advice: 'Cast on before it.',
          fixes: [castOn('it')],
        }
      const last = work.steps.length - 1
      const again = work.steps.slice(index).some(({ step }) => step.kind === 'bind off')
      return {
        step: before,
        message: `${stepNamed(work, before)} takes everything off the loom, but ${lowerFirst(stepNamed(work, index))} still needs loops.`,
        advice: 'Bind off at the end, or cast on again for a part of its own.',
        fixes: [
          again
            ? { label: `Remove step ${before + 1}`, edit: (p) => removeStep(p, before) }
            : {
                label: `Move step ${before + 1} to the end`,
                edit: (p) => moveStep(p, before, last),
              },
          castOn(`step ${index + 1}`),
        ],
      }
    })
  },
}

export const boundOff: PieceRule = {
  id: 'piece-bind-off',
  title: 'Loops are left on the loom',
  severity: 'error',
  scope: 'piece',
  check: (work) => {
    const left = loopsLeft(work)
    if (left === 0 || work.steps.length === 0) return []
    return [
      {
        step: work.steps.length - 1,
        message: `${counted(left, 'loop is', 'loops are')} still on the loom after the last step.`,
        advice: 'Bind them off, gather or graft them.',
        fixes: [
          {
            label: 'Bind off all loops at the end',
            edit: (p) => addStep(p, p.steps.length, { kind: 'bind off', how: 'basic', pegs: null }),
          },
          {
            label: 'Gather all loops at the end',
            edit: (p) =>
              addStep(p, p.steps.length, { kind: 'bind off', how: 'gather', pegs: null }),
          },
        ],
      },
    ]
  },
}

export const onHeldPegs: PieceRule = {
  id: 'piece-cast-on-held',
  title: 'Cast on where loops are',
  severity: 'error',
  scope: 'piece',
  check: (work) =>
    forSteps(work, (step, index) => {
      const held = step.edge?.faults.filter(({ kind }) => kind === 'peg in use') ?? []
      return step.step.kind === 'cast on' && held.length > 0
        ? {
            step: index,
            message: `${stepNamed(work, index)} casts on over ${held.length === 1 ? '1 peg that already has a loop' : `${held.length} pegs that already have loops`}.`,
            advice: 'Bind those loops off first, or cast on other pegs.',
            fixes: [{ label: `Remove step ${index + 1}`, edit: (p) => removeStep(p, index) }],
          }
        : null
    }),
}

export const evenHalves: PieceRule = {
  id: 'piece-halves',
  title: 'Halves that do not match',
  severity: 'warning',
  scope: 'piece',
  check: (work) =>
    forSteps(work, ({ step, before, toAndFro }, index) => {
      if (step.kind !== 'bind off' || (step.how !== 'graft' && step.how !== 'three-needle'))
        return null
      const { from, to } = edgePegs(step, before)
      const loops = before.stacks.slice(from, to + 1).filter(({ length }) => length > 0).length
      if (loops % 2 === 1)
        return {
          step: index,
          message: `${stepNamed(work, index)} joins ${counted(loops, 'loop')} in pairs: one has no partner.`,
          advice: 'Decrease one stitch before it, or bind off another way.',
        }
      const toe = step.pegs === null && !toAndFro ? toeBefore(work.steps.slice(0, index)) : null
      const pegs = toe ? toe.to - toe.from + 1 : loops / 2
      return 2 * pegs === loops
        ? null
        : {
            step: index,
            message: `${stepNamed(work, index)} joins ${loops / 2} loops with ${loops / 2}, but the short rows before it lie on ${pegs} pegs: the fold does not meet their corners.`,
            advice: `Work those short rows on ${loops / 2} pegs, or bind off another way.`,
          }
    }),
}

export const unusedChart: PieceRule = {
  id: 'piece-unused',
  title: 'Chart is in no step',
  severity: 'hint',
  scope: 'piece',
  check: ({ pattern, steps }) => {
    const used = new Set(steps.map(({ chart }) => chart?.name))
    return chartsInOrder(pattern)
      .filter(({ name }) => !used.has(name))
      .map(({ name }) => ({
        step: null,
        message: `The chart “${name}” is in no step.`,
        advice: 'Add a step that works it, or remove the chart.',
        fixes: [
          {
            label: `Work “${name}” before the last step`,
            edit: (p) =>
              addStep(p, Math.max(0, p.steps.length - 1), {
                kind: 'chart',
                chart: name,
                times: 1,
              }),
          },
          { label: `Remove the chart “${name}”`, edit: (p) => removeChart(p, name) },
        ],
      }))
  },
}
