import { newChart, type Chart, type Pattern, type Sheet, type ShortRowWish } from '../pattern'
import { pieceLimits, type Pictures, type Step } from '../piece'
import { findChart, namedOn } from '../charts'
import { eachChart } from './chart'

const withSteps = (pattern: Pattern, steps: readonly Step[]): Pattern =>
  steps === pattern.steps ? pattern : { ...pattern, steps }

/** Put a step in at place `at`, from 0. Nothing happens when the piece has as many as it can. */
export function addStep(pattern: Pattern, at: number, step: Step): Pattern {
  const { steps } = pattern
  if (steps.length >= pieceLimits.steps.most) return pattern
  return withSteps(pattern, steps.toSpliced(at, 0, step))
}

export const changeStep = (pattern: Pattern, at: number, step: Step): Pattern =>
  pattern.steps[at] === undefined || pattern.steps[at] === step
    ? pattern
    : withSteps(pattern, pattern.steps.with(at, step))

/** Take a step out. The chart that it works is kept. */
export const removeStep = (pattern: Pattern, at: number): Pattern =>
  at in pattern.steps ? withSteps(pattern, pattern.steps.toSpliced(at, 1)) : pattern

export function copyStep(pattern: Pattern, at: number): Pattern {
  const step = pattern.steps[at]
  return step ? addStep(pattern, at + 1, step) : pattern
}

/** Move a step so that it stands at place `to`. */
export function moveStep(pattern: Pattern, from: number, to: number): Pattern {
  const { steps } = pattern
  const step = steps[from]
  if (!step || from === to || to < 0 || to >= steps.length) return pattern
  return withSteps(pattern, steps.toSpliced(from, 1).toSpliced(to, 0, step))
}

/** A name that no chart has yet: the wish, or the wish with the next free number. */
export function freeName(pattern: Pattern, wish: string): string {
  const most = pieceLimits.name.most
  const base = wish.trim().slice(0, most) || 'Chart'
  if (!findChart(pattern, base)) return base
  for (let number = 2; ; number++) {
    const end = ` ${number}`
    const name = base.slice(0, most - end.length) + end
    if (!findChart(pattern, name)) return name
  }
}

/** Why a chart cannot be called this; null when it can. */
export function nameProblem(pattern: Pattern, from: string, to: string): string | null {
  const { least, most } = pieceLimits.name
  const length = to.trim().length
  if (length < least) return 'A chart needs a name.'
  if (length > most) return `The name has ${length} characters, and ${most} are the most.`
  if (to.trim() !== from && findChart(pattern, to.trim()))
    return `There is a chart called “${to.trim()}” already.`
  return null
}

/** Add a chart that no step works; its name is made free. `from`: the wish that it is made from. */
export function addChart(
  pattern: Pattern,
  name: string,
  chart: Chart,
  from: ShortRowWish | null = null,
): Pattern {
  if (pattern.charts.length >= pieceLimits.charts.most) return pattern
  const added = newChart(freeName(pattern, name), chart, from)
  return { ...pattern, charts: [...pattern.charts, added] }
}

/** A copy of a chart under a free name. */
export function copyChart(pattern: Pattern, name: string): Pattern {
  const chart = findChart(pattern, name)
  if (!chart || pattern.charts.length >= pieceLimits.charts.most) return pattern
  const copy = { ...chart, name: freeName(pattern, name) }
  return { ...pattern, charts: [...pattern.charts, copy] }
}

/** Rename a chart, in the steps too. Nothing happens for a name that cannot be. */
export function renameChart(sheet: Sheet, from: string, to: string): Sheet {
  const name = to.trim()
  if (name === from || !findChart(sheet, from) || nameProblem(sheet, from, to)) return sheet
  const { steps, pictures, on } = sheet
  return {
    ...sheet,
    ...(on === from && { on: name }),
    charts: eachChart(sheet.charts, (chart) => (chart.name === from ? { ...chart, name } : chart)),
    steps: steps.map((step) =>
      step.kind === 'chart' && step.chart === from ? { ...step, chart: name } : step,
    ),
    pictures: pictures.map((item) => (item.chart === from ? { ...item, chart: name } : item)),
  }
}

/** Take a chart out, with the steps that work it and its pictures. The last one stays. */
export function removeChart(pattern: Pattern, name: string): Pattern {
  const [first, ...others] = pattern.charts.filter((chart) => chart.name !== name)
  if (!first || !findChart(pattern, name)) return pattern
  return {
    ...pattern,
    charts: [first, ...others],
    steps: pattern.steps.filter((step) => !(step.kind === 'chart' && step.chart === name)),
    pictures: pattern.pictures.filter(({ chart }) => chart !== name),
  }
}

export const setPair = (pattern: Pattern, pair: Pattern['pair']): Pattern =>
  pair === pattern.pair ? pattern : { ...pattern, pair }

export const setPace = (pattern: Pattern, pace: Pattern['pace']): Pattern =>
  pace === pattern.pace ? pattern : { ...pattern, pace }

export const setSwatch = (pattern: Pattern, swatch: Pattern['swatch']): Pattern => ({
  ...pattern,
  swatch,
})

export const addPictures = (pattern: Pattern, pictures: Pictures): Pattern =>
  pattern.pictures.length >= pieceLimits.pictures.most
    ? pattern
    : { ...pattern, pictures: [...pattern.pictures, pictures] }

export const removePictures = (pattern: Pattern, at: number): Pattern =>
  at in pattern.pictures ? { ...pattern, pictures: pattern.pictures.toSpliced(at, 1) } : pattern

/** Rows of the chart worked on were put in or taken out: pictures go with their rows. */
export function movePictures(sheet: Sheet, placeOf: (row: number) => number | null): Sheet {
  const { name } = namedOn(sheet)
  if (sheet.pictures.every(({ chart }) => chart !== name)) return sheet
  return {
    ...sheet,
    pictures: sheet.pictures.flatMap((item) => {
      if (item.chart !== name) return [item]
      const row = placeOf(item.row)
      return row === null ? [] : [{ ...item, row }]
    }),
  }
}
