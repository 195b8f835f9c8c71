/** What the writer must know of the stitches of a row; `stitches` holds indexes into the others. */
export interface RowText {
  readonly stitches: Int32Array
  /** Can a run be written with a bare number (k2), or must it be a group ((k2tog) 3 times)? */
  readonly counted: readonly boolean[]
  readonly length: readonly number[]
  readonly takes: readonly number[]
}

/**
 * The stated cost: words first, then how often a group starts inside a run of like stitches or
 * ends on the stitch it starts with, then characters. A run of stitches is one word, or two if it
 * needs brackets; a group adds two (its brackets, its number), the asterisk one. The set phrase
 * "rep from * to end" counts for nothing else.
 */
export const word = 1 << 16
export const cut = 1 << 12
const character = 1
const separator = 2
const starLength = '*'.length
const starTailLength = 'last  sts'.length

/** More than any row costs. */
export const never = 0x3fffffff

/** Stitches from..to, which are all the same, written as one run. */
export function runCost(text: RowText, from: number, to: number): number {
  const stitch = num(text.stitches, from)
  const length = (text.length[stitch] ?? 0) + separator
  const count = to - from
  if (text.counted[stitch]) return word + character * (length + digits(count))
  if (count === 1) return word + character * length
  return 2 * word + character * (length + bracketsLength(count))
}

/** The brackets of a group and its number. */
export const timesCost = (times: number): number => 2 * word + character * bracketsLength(times)

/** The asterisk and "rep from * to end", or "to last n sts" where `lastLoops` are left. */
export const repeatCost = (lastLoops: number): number =>
  word + character * (starLength + (lastLoops > 0 ? starTailLength + digits(lastLoops) : 0))

export const num = (list: Int32Array, index: number): number => list[index] as number

const digits = (count: number): number => (count < 10 ? 1 : count < 100 ? 2 : 3)

const bracketsLength = (times: number): number => '() '.length + timesLength(times)

const timesLength = (times: number): number =>
  times === 2 ? 'twice'.length : digits(times) + ' times'.length
