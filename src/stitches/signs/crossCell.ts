import type { Command, Ink, Mark, Sign, SignPoint } from '../sign'
import type { Cross } from '../stitch'

/**
 * What both forms of a cross are worked out in: its cells are 1 wide and `ratio` high, so that slopes, gaps
 * and weights are those that are seen. All is worked out for a right cross, whose front group starts in the
 * left columns at the bottom and ends in the right ones at the top.
 */
export interface CrossCell extends Cross {
  /** Height of a cell, of which its width is 1. */
  readonly ratio: number
  /** Columns of the cross. */
  readonly width: number
  /** The shorter side of a cell: weights and gaps are shares of it. */
  readonly side: number
}

/** Weights of strokes as shares of the shorter side of a cell. */
export const strokes = { front: 0.12, line: 0.1, fine: 0.07 } as const
/** The clear gap between a strand in front and what goes on behind it, as such a share. */
export const clearance = 0.12

export const crossCell = (cross: Cross, ratio: number): CrossCell => ({
  ...cross,
  ratio,
  width: cross.front + cross.back,
  side: Math.min(1, ratio),
})

/** The same mark turned half round in its columns: the other end of what lies behind. */
function turned({ ink, path }: Mark, { width, ratio }: CrossCell): Mark {
  const turn = (command: Command): Command => {
    switch (command[0]) {
      case 'M':
      case 'L':
        return [command[0], width - command[1], ratio - command[2]]
      case 'O':
        return ['O', width - command[1], ratio - command[2], command[3]]
      default:
        return command
    }
  }
  return { ink, path: path.map(turn) }
}

export const atBothEnds = (marks: readonly Mark[], cell: CrossCell): Mark[] => [
  ...marks,
  ...marks.map((mark) => turned(mark, cell)),
]

/** From cells that are `ratio` high to those of a sign, which are 1 by 1. */
export function inUnitCells(marks: readonly Mark[], { ratio, side }: CrossCell): Sign {
  const unit = (command: Command): Command => {
    switch (command[0]) {
      case 'M':
      case 'L':
        return [command[0], command[1], command[2] / ratio]
      case 'O':
        return ['O', command[1], command[2] / ratio, command[3] / side]
      default:
        return command
    }
  }
  return marks.map(({ ink, path }) => ({ ink, path: path.map(unit) }))
}

/** How far a point lies right of the line through two others, square to it. */
export function rightOf([x, y]: SignPoint, [x0, y0]: SignPoint, [x1, y1]: SignPoint): number {
  return ((x - x0) * (y0 - y1) + (y - y0) * (x1 - x0)) / Math.hypot(x1 - x0, y1 - y0)
}

/** The part of an area that lies right of a line. */
export function clippedTo(
  points: readonly SignPoint[],
  from: SignPoint,
  to: SignPoint,
): SignPoint[] {
  return points.flatMap((point, i): SignPoint[] => {
    const next = points[(i + 1) % points.length] as SignPoint
    const [here, there] = [rightOf(point, from, to), rightOf(next, from, to)]
    const kept = here >= 0 ? [point] : []
    if (here >= 0 === there >= 0) return kept
    const share = here / (here - there)
    return [
      ...kept,
      [point[0] + (next[0] - point[0]) * share, point[1] + (next[1] - point[1]) * share],
    ]
  })
}

/** The two inks that a weight stands for; a stroke of several loops may be too narrow for the heavier. */
export const inkOfFront = (share: number): Ink =>
  share < (strokes.front + strokes.line) / 2 ? 'line' : 'front'
