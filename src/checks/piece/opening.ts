import { pegsInWork } from '../../loom/state'
import { emptyStack } from '../../loom/strand'
import { addChart, addStep, changeStep } from '../../pattern/edits/piece'
import { setRun } from '../../pattern/edits/turning'
import type { Pattern, Run } from '../../pattern/pattern'
import type { Step } from '../../pattern/piece'
import { schedule } from '../../pattern/schedule'
import { onChart, chartOn, editOn } from '../../pattern/charts'
import type { PieceWork, StepWork } from '../../pattern/workPiece'
import type { Fix } from '../../pattern/finding'
import type { PieceNote } from '../rule'
import { stepNamed, unitOf, works } from './steps'
import { pegsNamed } from '../../languages/english/pegs'

/** Pegs that an edge of this kind has worked in a step. */
const edgePegsOf = ({ step, edge }: StepWork, kind: 'cast on' | 'bind off'): readonly number[] =>
  step.kind === kind ? (edge?.way.pegs ?? []) : []

/** The pegs on either side of a run that were bound off and still are empty, with the run itself. */
function wholeOpening(steps: readonly StepWork[], at: number, { from, to }: Run): Run {
  const off = new Set(steps.slice(0, at).flatMap((step) => edgePegsOf(step, 'bind off')))
  const stacks = steps[at]?.before.stacks ?? []
  const isOpen = (peg: number): boolean => off.has(peg) && stacks[peg] === emptyStack
  let [first, last] = [from, to]
  while (isOpen(first - 1)) first--
  while (isOpen(last + 1)) last++
  return { from: first, to: last }
}

/** A round lacks loops because the cast-on before it left some pegs of the opening empty. */
export function castOnTooFew(work: PieceWork, index: number, needs: string): PieceNote | null {
  const { steps } = work
  const at = steps.findLastIndex(({ step }, before) => before < index && step.kind === 'cast on')
  const step = steps[at]?.step
  if (step?.kind !== 'cast on' || !step.pegs) return null
  const own = step.pegs
  const run = wholeOpening(steps, at, own)
  const left = [
    { from: run.from, to: own.from - 1 },
    { from: own.to + 1, to: run.to },
  ].filter(({ from, to }) => from <= to)
  const stacks = steps[index]?.before.stacks ?? []
  const isLeft = left.every(({ from, to }) =>
    stacks.slice(from, to + 1).every((stack) => stack === emptyStack),
  )
  if (left.length === 0 || !isLeft) return null
  return {
    step: at,
    message: `${stepNamed(work, at)} leaves ${left.map(pegsNamed).join(' and ')} empty. ${needs}`,
    advice: `Cast on ${pegsNamed(run)} here: these pegs were bound off.`,
    tries: [
      {
        label: `Cast on ${pegsNamed(run)} here`,
        edit: (pattern) => changeStep(pattern, at, { ...step, pegs: run }),
      },
    ],
  }
}

/** The pegs that lie between the yarn and an edge that begins further on; null where it has passed them. */
export const pegsUpTo = (step: StepWork, { from }: Run): Run | null => {
  const gap = step.before.yarn.gap % step.before.stacks.length
  return step.before.heading === 'forward' && gap < from ? { from: gap, to: from - 1 } : null
}

/** The row that leads to an edge ends where the edge begins, if it is one of a part of the pegs. */
export function endBesideEdge(
  work: PieceWork,
  index: number,
  { from }: Run,
): { readonly label: string; readonly fixes: readonly Fix[] } | null {
  const at = work.steps.findLastIndex((step, before) => before < index && works(step))
  const { chart, rows } = work.steps[at] ?? {}
  if (!chart || !rows) return null
  const number = schedule(chart.chart).at(-1)?.row ?? 0
  const run = chart.chart.rows[number]?.run
  const last = rows.rows.at(-1)
  const leads = last?.heading === 'forward' && last.row.from === run?.from && last.row.to === run.to
  if (!run || !leads || from <= run.from || from === run.to + 1) return null
  const label = `End ${chart.name}, ${unitOf(work, at, rows.rows.length - 1)} ${number + 1} at peg ${from}`
  const edit = editOn(chart.name, (sheet) =>
    setRun(sheet, number, { from: run.from, to: from - 1 }),
  )
  return { label, fixes: [{ label, edit }] }
}

/** A chart of a part of the pegs is worked again, but the pegs on the way back to its start hold no loops. */
export function turnAndWorkBack(
  work: PieceWork,
  index: number,
): Pick<PieceNote, 'advice' | 'fixes' | 'tries'> | null {
  const { step, chart: named, before, toAndFro } = work.steps[index] as StepWork
  if (step.kind !== 'chart' || !named || toAndFro) return null
  const { chart } = named
  const [run] = chart.rows.map((row) => row.run)
  const isSame = chart.rows.every(
    (row) => row.run?.from === run?.from && row.run?.to === run?.to && row.end === 'on',
  )
  if (!run || !isSame || chart.rows.some(({ heading }) => heading !== null)) return null
  const { stacks } = before
  const worked = pegsInWork({ ...before, stacks: stacks.slice(run.from, run.to + 1) })
  if (pegsInWork(before) > worked) return null
  const pegs = pegsNamed(run)
  const oneMore = { ...step, times: step.times + 1 }
  return {
    advice: `Turn and work back: before it, put ${pegs} in work, back and forth, and let the rows of its chart go over all pegs in work.`,
    tries: [step, oneMore].map((wish) => ({
      label: `Work ${pegs} back and forth${wish === step ? '' : `, ${wish.times} times`}`,
      edit: (pattern) => backAndForth(pattern, index, wish, run),
    })),
  }
}

/** The chart of a step without the ends of its rows, worked between turns; all pegs are in work after it. */
function backAndForth(
  pattern: Pattern,
  index: number,
  step: Extract<Step, { kind: 'chart' }>,
  run: Run,
): Pattern {
  const chart = chartOn(onChart(pattern, step.chart))
  const rows = chart.rows.map((row) => ({ ...row, run: null }))
  const made = addChart(pattern, `${step.chart} back and forth`, { ...chart, rows })
  const added = made.charts.find((one) => !pattern.charts.includes(one))
  if (!added) return pattern
  const changed = changeStep(made, index, { ...step, chart: added.name })
  const closed = addStep(changed, index + 1, { kind: 'pegs', run: null, toAndFro: false })
  return addStep(closed, index, { kind: 'pegs', run, toAndFro: true })
}
