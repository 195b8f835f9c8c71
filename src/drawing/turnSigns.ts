import type { RowEnd } from '../loom/row'
import { circle, curve, line, type Sign } from '../stitches/sign'

/**
 * How a row turns, drawn in the cell beyond its last peg, for work that comes from the left: a
 * German turn doubles the strand over its peg, a wrap goes round the next peg (ours).
 */
export const turnSigns: Readonly<Record<RowEnd, Sign>> = {
  on: [],
  'German turn': [
    curve(['M', 0.08, 0.86], ['C', 0.84, 0.86, 0.84, 0.14, 0.08, 0.14]),
    curve(['M', 0.08, 0.66], ['C', 0.48, 0.66, 0.48, 0.34, 0.08, 0.34]),
  ],
  wrap: [line([0.06, 0.5], [0.28, 0.5]), circle(0.5, 0.5, 0.22)],
}
