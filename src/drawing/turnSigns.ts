import type { RowEnd } from '../loom/row'
import { circle, curve, line, type Sign } from '../stitches/sign'

/**
 * How a row turns, for work that comes from the left: a German turn doubles the strand at the far
 * side of the last peg it works, a wrap goes round the next peg (ours). Each is drawn in the cell
 * of the peg that gets the strand.
 */
export const turnSigns: Readonly<Record<RowEnd, Sign>> = {
  on: [],
  'German turn': [
    curve(['M', 0.5, 0.88], ['C', 1.06, 0.88, 1.06, 0.12, 0.5, 0.12]),
    curve(['M', 0.5, 0.7], ['C', 0.82, 0.7, 0.82, 0.3, 0.5, 0.3]),
  ],
  wrap: [line([0.06, 0.5], [0.28, 0.5]), circle(0.5, 0.5, 0.22)],
}
