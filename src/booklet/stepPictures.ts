import { breakLines } from './page/text'
import { figurePicture, figureSheet, pictureWidth } from '../drawing/pegs/figures/sheet'
import type { Scene } from '../drawing/scene'
import type { Moment } from '../loom/walk'
import { addPictures } from '../pattern/edits/piece'
import type { Pattern } from '../pattern/pattern'
import { pieceLimits, type Pictures } from '../pattern/piece'
import { handsContext } from '../words/hands/context'
import { stepFigures, type StepFigure } from '../words/hands/figures'
import type { MoveRun } from '../loom/moves'
import type { Stretch } from '../pattern/stretches'

/** More figures than this are not made at once. */
export const mostFigures = 60

/** A numbered figure with its words. */
export interface Figure extends StepFigure {
  readonly picture: Scene
  /** From 1. */
  readonly number: number
}

export const figuresOf = (moments: readonly Moment[], pattern: Pattern): readonly StepFigure[] =>
  stepFigures(moments, handsContext(pattern))

export const drawFigures = (
  figures: readonly StepFigure[],
  moments: readonly Moment[],
  { loom, style: { terms } }: Pattern,
): readonly Figure[] =>
  figures.map((figure, index) => ({
    ...figure,
    number: index + 1,
    picture: figurePicture(moments, figure, loom, { width: pictureWidth(), terms }),
  }))

/** All figures on one sheet, each with its sentence. */
export const sheetOf = (figures: readonly Figure[], { terms }: Pattern['style']): Scene =>
  figureSheet(figures, { breakLines, terms })

/** Moves of one stretch. */
export interface StretchMoves extends MoveRun {
  readonly stretch: Stretch
}

/** Moves of chart rows, as the booklet keeps them; null where a part is no row of a chart. */
export function picturesOf(parts: readonly StretchMoves[]): readonly Pictures[] | null {
  const list: Pictures[] = []
  for (const { stretch, from, to } of parts) {
    if (!stretch.chart) return null
    list.push({ ...stretch.chart, from, to })
  }
  return list
}

const samePictures = (a: Pictures, b: Pictures): boolean =>
  a.chart === b.chart && a.row === b.row && a.from === b.from && a.to === b.to

/** Why these moves cannot go into the booklet; null when they can. */
export function reasonAgainstPictures(
  { pictures }: Pattern,
  list: readonly Pictures[] | null,
): string | null {
  const { most } = pieceLimits.pictures
  if (!list)
    return 'The booklet shows moves of charts only. These belong to an edge or to plain rows: save them as SVG.'
  if (list.length === 0) return 'There is no move to show here.'
  if (list.every((one) => pictures.some((other) => samePictures(one, other))))
    return 'These moves are in the booklet already.'
  if (pictures.length + list.length > most)
    return `The booklet has ${pictures.length} sets of step pictures and can have ${most}; this adds ${list.length}. Remove some first.`
  return null
}

export const putIntoBooklet =
  (list: readonly Pictures[]) =>
  (pattern: Pattern): Pattern =>
    list
      .filter((one) => !pattern.pictures.some((other) => samePictures(one, other)))
      .reduce(addPictures, pattern)
