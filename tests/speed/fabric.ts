import { fabricDrawing, type FabricDrawing } from '../../src/drawing/fabric/fabric'
import { short } from '../../src/drawing/path'
import { paint } from '../../src/pattern/edits/paint'
import { habitsOf } from '../../src/pattern/habits'
import { workPattern, type Work } from '../../src/pattern/work'
import { against, measureSteps, show, table } from './measure'
import { texturedPiece } from './pieces'
import { stitchOf } from '../../src/stitches/vocabulary'

const pegs = 96
const rows = 120
const calls = 15
const warm = 5

/** The most a whole drawing may take, ms. */
const most = 500

const draw = (
  { pattern, run }: Work,
  options: Parameters<typeof fabricDrawing>[4],
  previous?: FabricDrawing,
): FabricDrawing =>
  fabricDrawing(
    run.rows,
    habitsOf(pattern),
    pattern.loom,
    { stitches: 22, rows: 28 },
    options,
    previous,
  )

/** Every number that stands in the paths of a drawing. */
const numbersIn = ({ scene }: FabricDrawing): readonly number[] =>
  scene.layers.flatMap(({ items }) =>
    items.flatMap((item) =>
      item.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []).map(Number) : [],
    ),
  )

/**
 * The fabric drawn from nothing, and again after one edit, beside the least that any drawing of it
 * costs: writing the numbers of its paths.
 */
export function benchFabric(): void {
  const piece = texturedPiece(pegs, rows)
  const work = workPattern(piece)
  const edited = workPattern(paint(piece, stitchOf('p'), 60, 1), work)
  const yarn = draw(work, {})
  const numbers = numbersIn(yarn)
  const figures = measureSteps(
    {
      'the numbers of its paths': () => numbers.map((n) => `${short(n + 0.001)}`).join(' '),
      'yarn, flat': () => draw(work, {}),
      'yarn, tube': (turn) => draw(work, { view: 'tube', turn: turn % pegs }),
      'texture, flat': () => draw(work, { detail: 'texture' }),
      'texture, tube': (turn) => draw(work, { view: 'tube', detail: 'texture', turn: turn % pegs }),
      'yarn, after an edit': () => draw(edited, {}, yarn),
    },
    calls,
    warm,
  )
  const floor = figures[0]?.median ?? NaN
  console.log(`\nThe fabric of ${pegs} x ${rows} loops (${numbers.length} numbers), medians in ms`)
  table(
    ['', 'ms', 'to its numbers', 'at most'],
    figures.map(({ name, median }, index) => [
      name,
      show(median, 1),
      `${show(median / floor, 2)} x`,
      index === 0 ? '' : `${against(median, most)} ms`,
    ]),
  )
}
