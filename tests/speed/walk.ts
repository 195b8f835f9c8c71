import { loomFromAbove } from '../../src/drawing/pegs/above/above'
import { stripFromFront } from '../../src/drawing/pegs/strip/strip'
import { short } from '../../src/drawing/path'
import type { Layer } from '../../src/drawing/scene'
import type { Moment } from '../../src/loom/walk'
import { chartStretches, momentsOf } from '../../src/pattern/stretches'
import { habitsOf } from '../../src/pattern/habits'
import { workPattern } from '../../src/pattern/work'
import { handsContext } from '../../src/words/hands/context'
import { sayMove } from '../../src/words/hands/say'
import { against, measureSteps, show, table } from './measure'
import { texturedPiece } from './pieces'

const pegs = 200
const calls = 300
/** A frame at 60 frames a second, ms. */
const frame = 1000 / 60
const trailLength = 24

const numbersIn = (layers: readonly Layer[]): readonly number[] =>
  layers.flatMap(({ items }) =>
    items.flatMap((item) =>
      item.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []).map(Number) : [],
    ),
  )

/**
 * One move forward or back in a row with crosses: both drawings and the sentence, and a row come to
 * for the first time; beside the least that any drawing of a move costs: writing the numbers of the
 * paths that are new in it.
 */
export function benchWalk(): void {
  const piece = texturedPiece(pegs, 8)
  const { loom } = piece
  const context = handsContext(piece)
  const stretch = chartStretches(workPattern(piece))[5]
  if (!stretch) return
  const habits = habitsOf(piece)
  const moments = momentsOf(stretch, habits)
  const move = (at: number) => {
    const index = 1 + (at % (moments.length - 1))
    const moment = moments[index] as Moment
    const trail = moments.slice(Math.max(0, index - trailLength), index)
    const centre = moment.site?.peg ?? moment.gap
    return [
      loomFromAbove(moment, loom, { trail, width: 90 }).scene,
      stripFromFront(moment, loom, { centre: Math.floor(centre / 5) * 5, count: 11 }, { trail })
        .scene,
      sayMove(moment, trail.at(-1) ?? moment, context),
    ] as const
  }
  const drawn = [100, 101].map((at) =>
    move(at)
      .slice(0, 2)
      .flatMap((scene) => (typeof scene === 'string' ? [] : scene.layers)),
  )
  const old = new Set(drawn[0])
  const numbers = numbersIn((drawn[1] ?? []).filter((layer) => !old.has(layer)))
  const figures = measureSteps(
    {
      'the numbers of its new paths': () => numbers.map((n) => `${short(n + 0.001)}`).join(' '),
      'a move forward': (turn) => move(turn),
      'a row come to': () => momentsOf(stretch, habits),
    },
    calls,
  )
  // Back again, on drawings that the way forward left behind.
  const back = measureSteps({ 'a move back': (turn) => move(100_000 - turn) }, calls)
  const floor = figures[0]?.median ?? NaN
  console.log(`\nOne move on ${pegs} pegs (${moments.length - 1} moves in the row), medians in ms`)
  table(
    ['', 'ms', 'to its new paths', 'at most a frame'],
    [...figures, ...back].map(({ name, median }, index) => [
      name,
      show(median),
      `${show(median / floor, 1)} x`,
      index === 0 ? '' : `${against(median, Number(frame.toFixed(1)))} ms`,
    ]),
  )
}
