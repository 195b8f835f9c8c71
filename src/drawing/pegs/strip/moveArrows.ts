import { mm } from '../../path'
import type { Item } from '../../scene'
import { arrowNumber, arrowShaft, arrowStart, curvedArrow } from '../arrows'
import { arrowsOf, type ArrowPlace, type MoveArrow } from './arrowCurves'
import type { OneMove } from './doing'

/** Moves that show an arrow each where several of them are one figure. */
const eachShown = new Set(['take', 'put', 'move'])

/** The arrows that say what moves: numbered where there are several. */
export function moveArrows(steps: readonly OneMove[], place: ArrowPlace): readonly Item[] {
  const last = steps.at(-1)
  if (!last) return []
  const all = eachShown.has(last.after.move?.do ?? '') ? steps : [last]
  const first = steps.length - all.length
  const arrows = all.flatMap((step, index) => arrowsOf(step, first + index, steps.length, place))
  const { unit } = place.geometry
  const items = arrows.flatMap((arrow) => arrowItems(arrow, unit))
  // Where arrows cross neither is cut: none of them goes under another.
  const isRim = ({ ink }: Item): boolean => ink === 'ground'
  return [
    ...items.filter(isRim),
    ...items.filter((item) => !isRim(item)),
    ...arrows.flatMap(({ cover }) => cover ?? []),
    ...(arrows.length > 1
      ? arrows.flatMap(({ number }, index) => arrowNumber(number, index + 1, unit))
      : []),
  ]
}

function arrowItems({ curve, hidden, from }: MoveArrow, unit: number): readonly Item[] {
  const size = 0.3 * unit
  if (from) return [...arrowStart(from, size), ...curvedArrow(curve, size)]
  const dash = mm`${0.02 * unit} ${0.12 * unit}`
  if (!hidden) return curvedArrow(curve, size)
  return hidden.comes === 'last'
    ? [...arrowShaft(curve, size), ...curvedArrow(hidden.curve, size, dash)]
    : [...arrowShaft(hidden.curve, size, dash), ...curvedArrow(curve, size)]
}
