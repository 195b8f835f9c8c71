import type { RowEnd } from '../loom/row'
import { circle, curve, line, type Sign } from '../stitches/sign'

/**
 * How a row turns, drawn in the cell beyond its last peg, for work that comes from the left: a
 * German turn doubles the strand over its peg, a wrap goes round the next peg (ours).
 */
export const turnSigns: Readonly<Record<RowEnd, Sign>> = {
  on: [],
  'German turn': [
    curve(['M', 0.1, 0.8], ['C', 0.72, 0.8, 0.72, 0.2, 0.14, 0.2]),
    curve(['M', 0.1, 0.62], ['C', 0.4, 0.62, 0.4, 0.38, 0.1, 0.38]),
    line([0.3, 0.08], [0.12, 0.2], [0.32, 0.33]),
  ],
  wrap: [line([0.06, 0.5], [0.28, 0.5]), circle(0.5, 0.5, 0.22)],
}
