import { strokes } from '../stitches/signs/crossCell'

/** Line widths of the charts, mm: even and fine, so that the signs stand out from the grid. */
export const weights = {
  grid: 0.1,
  heavy: 0.18,
  frame: 0.28,
  box: 0.45,
  /** In a ring, where a repeat is a spoke. */
  spoke: 0.3,
  mark: 0.3,
} as const

/**
 * The least that can be read on paper, mm: the side of a cell, and the size of letters (about 5 pt).
 * Common practice in printing.
 */
export const smallestReadable = { cell: 2.5, text: 1.8 } as const

const hundredths = (least: number, most: number, size: number): number =>
  Math.round(Math.min(most, Math.max(least, size)) * 100) / 100

/** Stroke widths of signs in cells whose shorter side is `side` mm: what is in front is heaviest. */
export const signWeights = (side: number): Readonly<Record<'fine' | 'line' | 'front', number>> => ({
  fine: hundredths(0.12, 0.4, side * strokes.fine),
  line: hundredths(0.15, 0.6, side * strokes.line),
  front: hundredths(0.2, 0.7, side * strokes.front),
})

/** Size of numbers beside cells whose shorter side is `side` mm. */
export const numberSize = (side: number): number =>
  hundredths(smallestReadable.text, 3, side * 0.58)

/** A fair guess at the width of a text, mm: no letters are measured here. */
export const textWidth = (text: string, size: number): number => text.length * size * 0.58

const steps = [1, 5, 10, 20, 50, 100] as const

/** Every how many cells a number is written, when each cell has `space` mm and a number `needed`. */
export const numberStep = (space: number, needed: number): number =>
  steps.find((step) => step * space >= needed) ?? 200

/** Is the number of the cell at this place in its row or column written? */
export const isNumbered = (index: number, step: number): boolean =>
  index === 0 || (index + 1) % step === 0
