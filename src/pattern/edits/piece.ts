import type { Chart, Pattern } from '../pattern'
import { pieceLimits, type Pictures, type Piece, type Section, type Step } from '../piece'
import { findSection, sectionOnBench, sectionsOf, withOnBench } from '../sections'

const withPiece = (pattern: Pattern, change: Partial<Piece>): Pattern => ({
  ...pattern,
  piece: { ...pattern.piece, ...change },
})

const withSteps = (pattern: Pattern, steps: readonly Step[]): Pattern =>
  steps === pattern.piece.steps ? pattern : withPiece(pattern, { steps })

/** Put a step in at place `at`, from 0. Nothing happens when the piece has as many as it can. */
export function addStep(pattern: Pattern, at: number, step: Step): Pattern {
  const { steps } = pattern.piece
  if (steps.length >= pieceLimits.steps.most) return pattern
  return withSteps(pattern, steps.toSpliced(at, 0, step))
}

export const changeStep = (pattern: Pattern, at: number, step: Step): Pattern =>
  pattern.piece.steps[at] === undefined || pattern.piece.steps[at] === step
    ? pattern
    : withSteps(pattern, pattern.piece.steps.with(at, step))

/** Take a step out. The chart that it works is kept. */
export const removeStep = (pattern: Pattern, at: number): Pattern =>
  at in pattern.piece.steps ? withSteps(pattern, pattern.piece.steps.toSpliced(at, 1)) : pattern

export function copyStep(pattern: Pattern, at: number): Pattern {
  const step = pattern.piece.steps[at]
  return step ? addStep(pattern, at + 1, step) : pattern
}

/** Move a step so that it stands at place `to`. */
export function moveStep(pattern: Pattern, from: number, to: number): Pattern {
  const { steps } = pattern.piece
  const step = steps[from]
  if (!step || from === to || to < 0 || to >= steps.length) return pattern
  return withSteps(pattern, steps.toSpliced(from, 1).toSpliced(to, 0, step))
}

/** A name that no section has yet: the wish, or the wish with the next free number. */
export function freeName(pattern: Pattern, wish: string): string {
  const most = pieceLimits.name.most
  const base = wish.trim().slice(0, most) || 'Chart'
  if (!findSection(pattern, base)) return base
  for (let number = 2; ; number++) {
    const end = ` ${number}`
    const name = base.slice(0, most - end.length) + end
    if (!findSection(pattern, name)) return name
  }
}

/** Why a section cannot be called this; null when it can. */
export function nameProblem(pattern: Pattern, from: string, to: string): string | null {
  const { least, most } = pieceLimits.name
  const length = to.trim().length
  if (length < least) return 'A chart needs a name.'
  if (length > most) return `The name has ${length} characters, and ${most} are the most.`
  if (to.trim() !== from && findSection(pattern, to.trim()))
    return `There is a chart called “${to.trim()}” already.`
  return null
}

/** Add a section, which stays off the bench and in no step; its name is made free. */
export function addSection(pattern: Pattern, wish: string, chart: Chart): Pattern {
  if (sectionsOf(pattern).length >= pieceLimits.sections.most) return pattern
  const section: Section = { name: freeName(pattern, wish), chart, words: null, aside: [] }
  return withPiece(pattern, { others: [...pattern.piece.others, section] })
}

/** Put the chart of this section on the bench; the one that was there is kept. */
export const openSection = withOnBench

/** A copy of a section under a free name. */
export function copySection(pattern: Pattern, name: string): Pattern {
  const section = findSection(pattern, name)
  if (!section || sectionsOf(pattern).length >= pieceLimits.sections.most) return pattern
  const copy = { ...section, name: freeName(pattern, name) }
  return withPiece(pattern, { others: [...pattern.piece.others, copy] })
}

/** Rename a section, in the steps too. Nothing happens for a name that cannot be. */
export function renameSection(pattern: Pattern, from: string, to: string): Pattern {
  const name = to.trim()
  if (name === from || !findSection(pattern, from) || nameProblem(pattern, from, to)) return pattern
  const { onBench, others, steps, pictures } = pattern.piece
  return withPiece(pattern, {
    onBench: onBench === from ? name : onBench,
    others: others.map((section) => (section.name === from ? { ...section, name } : section)),
    steps: steps.map((step) =>
      step.kind === 'chart' && step.section === from ? { ...step, section: name } : step,
    ),
    pictures: pictures.map((item) => (item.section === from ? { ...item, section: name } : item)),
  })
}

/** Take a section out, with the steps that work it and its pictures. The last one stays. */
export function removeSection(pattern: Pattern, name: string): Pattern {
  const next = sectionsOf(pattern).find((section) => section.name !== name)
  if (!next || !findSection(pattern, name)) return pattern
  const put = name === pattern.piece.onBench ? withOnBench(pattern, next.name) : pattern
  return withPiece(put, {
    others: put.piece.others.filter((section) => section.name !== name),
    steps: put.piece.steps.filter((step) => !(step.kind === 'chart' && step.section === name)),
    pictures: put.piece.pictures.filter(({ section }) => section !== name),
  })
}

/** The charts of all sections changed alike, the one on the bench too. */
export function withAllCharts(pattern: Pattern, change: (chart: Chart) => Chart): Pattern {
  const { chart } = sectionOnBench(pattern)
  return {
    ...pattern,
    chart: change(chart),
    piece: {
      ...pattern.piece,
      others: pattern.piece.others.map((section) => ({
        ...section,
        chart: change(section.chart),
      })),
    },
  }
}

export const setPair = (pattern: Pattern, pair: Piece['pair']): Pattern =>
  pair === pattern.piece.pair ? pattern : withPiece(pattern, { pair })

export const setPace = (pattern: Pattern, pace: Piece['pace']): Pattern =>
  pace === pattern.piece.pace ? pattern : withPiece(pattern, { pace })

export const setSwatch = (pattern: Pattern, swatch: Piece['swatch']): Pattern =>
  withPiece(pattern, { swatch })

export const addPictures = (pattern: Pattern, pictures: Pictures): Pattern =>
  pattern.piece.pictures.length >= pieceLimits.pictures.most
    ? pattern
    : withPiece(pattern, { pictures: [...pattern.piece.pictures, pictures] })

export const removePictures = (pattern: Pattern, at: number): Pattern =>
  at in pattern.piece.pictures
    ? withPiece(pattern, { pictures: pattern.piece.pictures.toSpliced(at, 1) })
    : pattern

/** Rows of the chart on the bench were put in or taken out: pictures go with their rows. */
export const movePictures = (pattern: Pattern, placeOf: (row: number) => number | null): Pattern =>
  pattern.piece.pictures.every(({ section }) => section !== pattern.piece.onBench)
    ? pattern
    : withPiece(pattern, {
        pictures: pattern.piece.pictures.flatMap((item) => {
          if (item.section !== pattern.piece.onBench) return [item]
          const row = placeOf(item.row)
          return row === null ? [] : [{ ...item, row }]
        }),
      })
