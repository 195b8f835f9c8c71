import { limits } from '../../pattern/pattern'

/** What one reading is bounded by, so that any text is read in a time that follows its length. */
export const readLimits = {
  /** Characters read; the rest of a longer text is left unread. */
  text: limits.words.most,
  /** The largest number that is read; a larger one is taken as this, with a remark. */
  number: 99_999,
  /** Sizes in one list. */
  sizes: limits.sizes.most,
  /** Stitches in one row. */
  stitches: 4000,
  /** Rows in all, repeats of rows worked out. */
  rows: 5000,
  /** Rows that one line names. */
  rowsInLine: 2000,
  /** Stitches in all rows together. */
  work: 1_000_000,
  /** Items and repeats of one line, worked out. */
  steps: 20_000,
  /** Times that a section is told differently, "The 1st and 3rd time:". */
  times: limits.times.most,
  /** Stitches before a rib begins anew. */
  rib: limits.pegs.most,
  /** Brackets inside brackets. */
  depth: 12,
  remarks: 1000,
} as const

/** A number of the text, as far as numbers are read. */
export const bounded = (number: number): number => Math.min(number, readLimits.number)

/** Figures of a text as a number; longer ones than any number has are not worked out. */
export const numberIn = (figures: string): number => bounded(Number(figures.slice(0, 9)))

/** Numbers of more figures than are read. */
export const isTooLarge = (number: number): boolean => number > readLimits.number

/** Put the numbers first to last behind those that a line names already, as far as it may. */
export function nameRows(numbers: number[], first: number, last: number): void {
  const room = readLimits.rowsInLine - numbers.length
  for (let number = first; number <= Math.min(last, first + room - 1); number++)
    numbers.push(number)
}

/** 5000 as "5,000". */
export const figuresOf = (number: number): string => number.toLocaleString('en-US')
