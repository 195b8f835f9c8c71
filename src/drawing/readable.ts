import type { Geometry } from './geometry'
import { smallestReadable } from './sizes'

const mm = (n: number): string => (Math.floor(n * 10) / 10).toFixed(1)

/**
 * Why the drawing, printed at `scale`, could not be read, with the numbers and what to do; null
 * when it can be read.
 */
export function cellSizeWarning({ smallest, text }: Geometry, scale = 1): string | null {
  const cell = Math.min(smallest.width, smallest.height) * scale
  const side = smallest.width <= smallest.height ? 'wide' : 'high'
  const least = smallestReadable
  const enough = Math.max(least.cell / cell, least.text / (text * scale))
  if (enough <= 1.0001) return null
  const what =
    cell < least.cell
      ? `Cells would be ${mm(cell)} mm ${side}; ${least.cell} mm is the least that can be read.`
      : `Numbers would be ${mm(text * scale)} mm high; ${least.text} mm is the least that can be read.`
  return `${what} Print it ${Math.ceil(enough * 10) / 10} times as large, on more sheets.`
}

export const readable = (geometry: Geometry, scale = 1): boolean =>
  cellSizeWarning(geometry, scale) === null
