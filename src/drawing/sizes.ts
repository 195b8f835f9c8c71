/** Line widths of the charts, mm: even and fine, so that the signs stand out from the grid. */
export const weights = { grid: 0.1, heavy: 0.22, frame: 0.28, box: 0.45, mark: 0.3 } as const

/**
 * The least that can be read on paper, mm: the side of a cell, and the size of letters (about 5 pt).
 * Common practice in printing.
 */
export const smallestReadable = { cell: 2.5, text: 1.8 } as const

/** Stroke width of signs in cells whose shorter side is `side` mm. */
export const signWeight = (side: number): number =>
  Math.round(Math.min(0.6, Math.max(0.15, side * 0.08)) * 100) / 100

/** Size of numbers beside cells whose shorter side is `side` mm. */
export const numberSize = (side: number): number =>
  Math.round(Math.min(3, Math.max(smallestReadable.text, side * 0.58)) * 100) / 100

/** A fair guess at the width of a text, mm: no letters are measured here. */
export const textWidth = (text: string, size: number): number => text.length * size * 0.58

const steps = [1, 5, 10, 20, 50, 100] as const

/** Every how many cells a number is written, when each cell has `space` mm and a number `needed`. */
export const numberStep = (space: number, needed: number): number =>
  steps.find((step) => step * space >= needed) ?? 200

/** Is the number of the cell at this place in its row or column written? */
export const isNumbered = (index: number, step: number): boolean =>
  index === 0 || (index + 1) % step === 0
