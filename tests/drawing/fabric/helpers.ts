import {
  fabricDrawing,
  type FabricDrawing,
  type FabricOptions,
} from '../../../src/drawing/fabric/fabric'
import { acrossOf, middlePeg } from '../../../src/drawing/fabric/across'
import { heightsOf } from '../../../src/drawing/fabric/heights'
import { slitsOf } from '../../../src/drawing/fabric/slits'
import { placeLoops, type PlacedRow } from '../../../src/drawing/fabric/place'
import { trace, type Trace } from '../../../src/loom/trace'
import type { Pattern } from '../../../src/pattern/pattern'
import { habitsOf } from '../../../src/pattern/habits'
import { workPattern, type Work } from '../../../src/pattern/work'
import type { InkRole, Item } from '../../../src/drawing/scene'

export const drawWork = (
  { pattern, run }: Work,
  options: FabricOptions = {},
  previous?: FabricDrawing,
): FabricDrawing =>
  fabricDrawing(run.rows, habitsOf(pattern), pattern.loom, pattern.gauge, options, previous)

export const draw = (pattern: Pattern, options: FabricOptions = {}): FabricDrawing =>
  drawWork(workPattern(pattern), options)

export const traced = (pattern: Pattern): Trace =>
  trace(workPattern(pattern).run.rows, habitsOf(pattern))

export function place(
  pattern: Pattern,
  turn = middlePeg(pattern.loom),
  follow: readonly number[] = [],
): readonly PlacedRow[] {
  const { rows } = workPattern(pattern).run
  const { loom } = pattern
  const heights = heightsOf(rows, loom.pegs)
  return placeLoops(
    trace(rows, habitsOf(pattern)),
    heights,
    slitsOf(rows, heights),
    acrossOf(loom, turn),
    follow,
  )
}

/** All path data of an ink, or of all inks. */
export const pathsOf = (items: readonly Item[], ink?: InkRole): string =>
  items
    .flatMap((item) =>
      item.kind === 'path' && (ink === undefined || item.ink === ink) ? [item.d] : [],
    )
    .join('')

export const shapesIn = (d: string): number => d.split('M').length - 1

/** The points of a path, [x, y], in drawing order. */
export const pointsOf = (d: string): (readonly [number, number])[] =>
  [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)])

/** Layers of the rows, the cast-on first. */
export const rowLayers = ({ scene }: FabricDrawing) =>
  scene.layers.filter(({ key }) => key !== 'back')
