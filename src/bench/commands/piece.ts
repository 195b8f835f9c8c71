import {
  addChart,
  addStep,
  changeStep,
  copyChart,
  copyStep,
  freeName,
  moveStep,
  removeChart,
  removeStep,
  renameChart,
} from '../../pattern/edits/piece'
import type { LoomState } from '../../loom/state'
import type { Chart, Pattern, Run, ShortRowWish } from '../../pattern/pattern'
import { pieceLimits, type Step, type StepKind } from '../../pattern/piece'
import { findChart, chartsInOrder, usedCharts } from '../../pattern/charts'
import { kindNames } from '../piece/stepWords'
import type { Bench } from '../state/bench.svelte'
import type { Command } from './command'

const { steps: stepLimits, charts: chartLimits } = pieceLimits

/** Look at another chart. */
export function showChart(bench: Bench, name: string): void {
  if (!bench.lookAt(name)) return
  bench.opened = {}
  bench.say(`The chart “${name}” is on the bench.`)
}

/** Look at a step; the chart that it works comes on the bench. */
export function chooseStep(bench: Bench, index: number | null): void {
  bench.piece.chosen = index
  const step = index === null ? undefined : bench.pattern.steps[index]
  if (step?.kind === 'chart') showChart(bench, step.chart)
}

/** Where a new step goes: after the chosen one, but before what ends the piece. */
export function placeForStep({ piece, pattern }: Bench): number {
  const { steps } = pattern
  const { chosen } = piece
  const end = steps.at(-1)?.kind === 'bind off' ? steps.length - 1 : steps.length
  return chosen === null ? end : Math.min(chosen + 1, end)
}

/** The first pegs without loops among others that hold some; null: all pegs. */
function firstEmpty({ stacks }: LoomState): Run | null {
  const from = stacks.findIndex(({ length }) => length === 0)
  const held = stacks.findIndex(({ length }, peg) => peg > from && length > 0)
  if (from < 0 || (from === 0 && held < 0)) return null
  return { from, to: held < 0 ? stacks.length - 1 : held - 1 }
}

/** What a new step of a kind is like, put in at this place. */
export function newStep({ pattern, piece, on }: Bench, kind: StepKind, at: number): Step {
  switch (kind) {
    case 'cast on':
      return {
        kind,
        how: 'e-wrap',
        pegs: firstEmpty(piece.work.steps[at]?.before ?? piece.work.end),
      }
    case 'chart': {
      const used = new Set(usedCharts(pattern).map(({ name }) => name))
      const unused = pattern.charts.find(({ name }) => !used.has(name))
      return { kind, chart: used.has(on) && unused ? unused.name : on, times: 1 }
    }
    case 'plain':
      return { kind, stitch: pattern.vocabulary.withRole('knit'), amount: { rows: 10 } }
    case 'pegs': {
      // It goes on as the work before it: nothing turns before someone says so.
      const before = piece.work.steps[at - 1]
      const toAndFro = pattern.loom.shape === 'ring' && (before?.toAndFro ?? false)
      return { kind, run: null, toAndFro }
    }
    case 'note':
      return { kind, text: '' }
    case 'bind off':
      return { kind, how: 'basic', pegs: null }
  }
}

export const roomForSteps = ({ pattern }: Bench): string | null =>
  pattern.steps.length >= stepLimits.most
    ? `The piece has ${stepLimits.most} steps, the most it can have.`
    : null

export const roomForCharts = ({ pattern }: Bench): string | null =>
  chartsInOrder(pattern).length >= chartLimits.most
    ? `The piece has ${chartLimits.most} charts, the most it can have.`
    : null

/** Put a step in at this place and look at it. Gives false, and says why, when there is no room. */
export function putStep(bench: Bench, kind: StepKind, at: number): boolean {
  const reason = roomForSteps(bench)
  if (reason) bench.say(reason)
  else {
    const step = newStep(bench, kind, at)
    const name = kindNames[kind].toLowerCase()
    if (!bench.apply(`Add a step: ${name}`, (p) => addStep(p, at, step))) return false
    bench.piece.chosen = at
    bench.say(`Step ${at + 1} is added: ${name}.`)
  }
  return reason === null
}

/** Change a step in its place; chosen, it stays so. */
export function editStep(bench: Bench, at: number, step: Step): boolean {
  const { chosen } = bench.piece
  const done = bench.apply(`Change step ${at + 1}`, (p) => changeStep(p, at, step))
  if (chosen === at) bench.piece.chosen = at
  return done
}

/** What can be done with the step at this place. After each the step looked at is the one moved. */
export const stepCommands = (at: number): readonly Command[] => {
  const step = at + 1
  const move = (bench: Bench, to: number, label: string) => {
    if (!bench.apply(label, (p) => moveStep(p, at, to))) return
    bench.piece.chosen = to
    bench.say(`Step ${step} is now step ${to + 1}.`)
  }
  return [
    {
      id: 'step-up',
      label: `Move step ${step} up`,
      keys: ['Alt+ArrowUp'],
      reason: () => (at === 0 ? 'It is the first step.' : null),
      run: (bench) => move(bench, at - 1, `Move step ${step} up`),
    },
    {
      id: 'step-down',
      label: `Move step ${step} down`,
      keys: ['Alt+ArrowDown'],
      reason: ({ pattern }) => (at >= pattern.steps.length - 1 ? 'It is the last step.' : null),
      run: (bench) => move(bench, at + 1, `Move step ${step} down`),
    },
    {
      id: 'step-copy',
      label: `Copy step ${step}`,
      keys: [],
      reason: roomForSteps,
      run: (bench) => {
        if (!bench.apply(`Copy step ${step}`, (p) => copyStep(p, at))) return
        bench.piece.chosen = at + 1
        bench.say(`Step ${step + 1} is a copy of step ${step}.`)
      },
    },
    {
      id: 'step-out',
      label: `Remove step ${step}`,
      keys: [],
      run: (bench) => {
        if (!bench.apply(`Remove step ${step}`, (p) => removeStep(p, at))) return
        const last = bench.pattern.steps.length - 1
        bench.piece.chosen = last < 0 ? null : Math.min(at, last)
        bench.say(`Step ${step} is removed. Undo brings it back.`)
      },
    },
  ]
}

/**
 * A chart of its own under a free name; it stays off the bench. `from`: the wish that it is made from. `then` belongs
 * to the same edit. Gives its name, or null.
 */
export function putChart(
  bench: Bench,
  wanted: string,
  chart: Chart,
  step: boolean,
  from: ShortRowWish | null = null,
  then: (pattern: Pattern) => Pattern = (pattern) => pattern,
): string | null {
  const reason = roomForCharts(bench) ?? (step ? roomForSteps(bench) : null)
  if (reason) {
    bench.say(reason)
    return null
  }
  const name = freeName(bench.pattern, wanted)
  const at = placeForStep(bench)
  const done = bench.apply(`Add the chart “${name}”`, (p) => {
    const added = addChart(p, wanted, chart, from)
    return then(step ? addStep(added, at, { kind: 'chart', chart: name, times: 1 }) : added)
  })
  if (!done) return null
  if (step) bench.piece.chosen = at
  bench.say(
    step
      ? `The chart “${name}” is added, worked in step ${at + 1}.`
      : `The chart “${name}” is added.`,
  )
  return name
}

export function nameChart(bench: Bench, from: string, to: string): void {
  bench.apply(`Rename “${from}” to “${to.trim()}”`, (p) => renameChart(p, from, to))
}

export function doubleChart(bench: Bench, name: string): void {
  const reason = roomForCharts(bench)
  if (reason) {
    bench.say(reason)
    return
  }
  const copy = freeName(bench.pattern, name)
  bench.apply(`Copy the chart “${name}”`, (p) => copyChart(p, name))
  bench.say(`“${copy}” is a copy of “${name}”.`)
}

/** Places of the steps that work a chart, 0-based. */
export const stepsOfChart = ({ pattern }: Bench, name: string): readonly number[] =>
  pattern.steps.flatMap((step, index) =>
    step.kind === 'chart' && step.chart === name ? [index] : [],
  )

export function dropChart(bench: Bench, name: string): void {
  if (chartsInOrder(bench.pattern).length === 1) {
    bench.say('A piece keeps at least one chart.')
    return
  }
  if (!findChart(bench.pattern, name)) return
  const steps = stepsOfChart(bench, name).length
  if (!bench.apply(`Remove the chart “${name}”`, (p) => removeChart(p, name))) return
  bench.piece.chosen = null
  const withSteps =
    steps === 0 ? '' : steps === 1 ? ' with the step that worked it' : ` with ${steps} steps`
  bench.say(`“${name}” is removed${withSteps}. Undo brings it back.`)
}
