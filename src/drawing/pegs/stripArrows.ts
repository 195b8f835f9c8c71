import { short } from '../path'
import type { Item } from '../scene'
import { arrowNumber, arrowShaft, curvedArrow } from './arrows'
import { arrowsOf, type ArrowPlace, type MoveArrow } from './arrowCurves'
import type { Step } from './doing'

/** Moves that show an arrow each where several of them are one figure. */
const eachShown = new Set(['take', 'put', 'move'])

/** The arrows that say what moves: numbered where there are several. */
export function moveArrows(steps: readonly Step[], place: ArrowPlace): readonly Item[] {
  const last = steps.at(-1)
  if (!last) return []
  const all = eachShown.has(last.after.move?.do ?? '') ? steps : [last]
  const first = steps.length - all.length
  const arrows = all.flatMap((step, index) => arrowsOf(step, first + index, place))
  const { unit } = place.geometry
  return [
    ...arrows.flatMap((arrow) => arrowItems(arrow, unit)),
    ...(arrows.length > 1
      ? arrows.flatMap(({ number }, index) => arrowNumber(number, index + 1, unit))
      : []),
  ]
}

function arrowItems({ curve, hidden }: MoveArrow, unit: number): readonly Item[] {
  const size = 0.3 * unit
  const dash = `${short(0.02 * unit)} ${short(0.12 * unit)}`
  if (!hidden) return curvedArrow(curve, size)
  return hidden.comes === 'last'
    ? [...arrowShaft(curve, size), ...curvedArrow(hidden.curve, size, dash)]
    : [...arrowShaft(hidden.curve, size, dash), ...curvedArrow(curve, size)]
}
