import { mirrorSign, type Mark, type Sign, type Tradition } from '../sign'
import type { Cross } from '../stitch'
import { bands } from './bands'
import { crossCell, inUnitCells, type CrossCell } from './crossCell'
import { strands } from './strands'

const forms: Readonly<Record<Tradition, (cell: CrossCell) => Mark[]>> = {
  cyc: bands,
  jis: strands,
}

/** Ratios of cells are told apart by so much. */
const step = 0.05
const made = new WeakMap<Cross, Map<string, Sign>>()

/**
 * The sign of a cross in cells that are `ratio` times as high as wide: one drawing for the whole family; a
 * left cross is the mirror image of a right one. The same sign when it is asked for again.
 */
export function crossSign(cross: Cross, tradition: Tradition, ratio: number): Sign {
  let ofCross = made.get(cross)
  if (!ofCross) made.set(cross, (ofCross = new Map<string, Sign>()))
  const steps = Math.max(1, Math.round(ratio / step))
  const key = `${tradition} ${steps}`
  let sign = ofCross.get(key)
  if (!sign) {
    const cell = crossCell(cross, steps * step)
    const right = inUnitCells(forms[tradition](cell), cell)
    sign = cross.lean === 'right' ? right : mirrorSign(right, cell.width)
    ofCross.set(key, sign)
  }
  return sign
}
