import { withWishes } from '../generate/anew'
import type { Cell, Sheet } from '../pattern'
import { withAllCharts, withCells } from './chart'
import { otherDirection } from '../../loom/direction'
import { turnPiece } from './turn-piece'

/**
 * Mirror the design, for the second of a pair, in every chart: crosses and leans swap. In the
 * round columns and pegs are counted from the other end and the loom goes on being worked the same
 * way; a heel is placed on the other half and worked as before, since its rows begin where the yarn
 * is. On a bar, and where rows of a part of the pegs would then not begin where the yarn is, the
 * second is begun at the other end instead: the same columns, the loom worked the other way.
 */
export function mirror(pattern: Sheet): Sheet {
  const { shape, direction } = pattern.loom
  if (shape === 'bar') return fromTheOtherEnd(pattern)
  const turned = turnPiece(pattern, {
    direction,
    rename: (stitch) => pattern.vocabulary.mirrorOf(stitch),
    sameWays: true,
  })
  return turned.ok ? turned.pattern : fromTheOtherEnd(pattern)
}

/** The mirror image move by move: peg 1 stands at the other side, all is worked as before. */
function fromTheOtherEnd(pattern: Sheet): Sheet {
  const { loom, vocabulary } = pattern
  const mirrored = (cells: readonly Cell[]) =>
    cells.map((cell) => cell && vocabulary.mirrorOf(cell))
  const turned = withAllCharts(pattern, (chart) => ({
    ...chart,
    rows: withCells(chart.rows, mirrored),
  }))
  const begun = { ...turned, loom: { ...loom, direction: otherDirection(loom.direction) } }
  return withWishes(begun, pattern, (wish) => ({
    ...wish,
    beside: wish.beside && [mirrored(wish.beside[0]), mirrored(wish.beside[1])],
  }))
}
