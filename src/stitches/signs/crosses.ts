import { line, type Signs } from '../sign'
import type { Cross } from '../stitch'

export const crossSigns = ({ front, back }: Cross): Signs => {
  const width = front + back
  return { cyc: [line([0, 1], [width, 0])], jis: [line([0, 1], [width, 0])] }
}
