import { usualEdges } from './piece'
import type { Chart, NamedChart, Pattern, Sheet } from './pattern'

/** The document with this chart to be worked on. */
export const onChart = (pattern: Pattern, name: string): Sheet => ({ ...pattern, on: name })

/** The chart that is worked on: the first where none is named, or one that is not there. */
export const namedOn = ({ charts, on }: Sheet): NamedChart =>
  charts.find(({ name }) => name === on) ?? charts[0]

export const chartOn = (sheet: Sheet): Chart => namedOn(sheet).chart

/** An edit done to this chart, whichever is worked on. */
export const editOn =
  (name: string, edit: (sheet: Sheet) => Sheet) =>
  (sheet: Sheet): Sheet => {
    const edited = edit(onChart(sheet, name))
    return sheet.on === undefined ? withoutOn(edited) : onChart(edited, sheet.on)
  }

/** The document by itself; the same where it names no chart. */
export function withoutOn(sheet: Sheet): Pattern {
  if (!('on' in sheet)) return sheet
  const pattern = { ...sheet }
  delete pattern.on
  return pattern
}

/** The chart of this name; undefined when there is none. */
export const findChart = ({ charts }: Pattern, name: string): NamedChart | undefined =>
  charts.find((chart) => chart.name === name)

/** All charts, in the order in which the steps first use them; those that none uses come last. */
export function chartsInOrder({ charts, steps }: Pattern): readonly NamedChart[] {
  const used = steps.flatMap((step) => (step.kind === 'chart' ? [step.chart] : []))
  const place = ({ name }: NamedChart): number => {
    const index = used.indexOf(name)
    return index < 0 ? used.length : index
  }
  return charts.toSorted((a, b) => place(a) - place(b))
}

/** The charts that the steps work, in the order in which they first do. */
export const usedCharts = (pattern: Pattern): readonly NamedChart[] =>
  chartsInOrder(pattern).filter(({ name }) =>
    pattern.steps.some((step) => step.kind === 'chart' && step.chart === name),
  )

/** Is the piece no more than its one chart, worked once between casting on and binding off? */
export function isOneChart({ charts, steps, pair }: Pattern): boolean {
  const [first, chart, last] = steps
  return (
    charts.length === 1 &&
    pair === 'none' &&
    steps.length === 3 &&
    first?.kind === 'cast on' &&
    first.pegs === null &&
    chart?.kind === 'chart' &&
    chart.chart === charts[0].name &&
    chart.times === 1 &&
    last?.kind === 'bind off' &&
    last.pegs === null
  )
}

/** Is it that, and cast on and bound off in the plainest way? Its words need not say how. */
export function isPlainPiece(pattern: Pattern): boolean {
  const { castOn, bindOff } = usualEdges
  return (
    isOneChart(pattern) &&
    pattern.steps.every(
      (step) =>
        (step.kind !== 'cast on' || step.how === castOn) &&
        (step.kind !== 'bind off' || step.how === bindOff),
    )
  )
}

/** Are the loops of this chart grafted or otherwise joined straight after it, as those of a toe are? */
export function isJoinedAfter(pattern: Pattern, name: string): boolean {
  const steps = pattern.steps.filter(({ kind }) => kind !== 'note')
  const ends = steps.flatMap((step, index) =>
    step.kind === 'chart' && step.chart === name
      ? [step.times === 1 ? steps[index + 1] : undefined]
      : [],
  )
  return (
    ends.length > 0 &&
    ends.every(
      (end) => end?.kind === 'bind off' && (end.how === 'graft' || end.how === 'three-needle'),
    )
  )
}

/** Does each chart have the own words it had? */
export const sameWords = (before: Pattern['charts'], now: Pattern['charts']): boolean =>
  before === now ||
  (before.length === now.length && before.every(({ words }, at) => words === now[at]?.words))
