/**
 * Feet, for socks: lengths in mm. Shoe sizes count the last, the form a shoe is made on, which is
 * about 15 mm longer than the foot (common practice). Guidelines only: measure the foot where that can be done.
 */
const last = { longerThanFoot: 15 } as const

/** One Paris point is 2/3 cm, one barleycorn 1/3 in. */
export const parisPoint = 20 / 3
export const barleycorn = 25.4 / 3

/** Length of the foot for an EU shoe size: the last in Paris points. */
export const footOfEuSize = (size: number): number => size * parisPoint - last.longerThanFoot

/** For a UK child's size: barleycorns of the last from 4 in on. */
export const footOfUkChildSize = (size: number): number =>
  (size + 12) * barleycorn - last.longerThanFoot

/** A sock is knitted shorter than the foot that it fits, by 5 to 10 % of the foot (common practice). */
export const sockShorter = { least: 0.05, most: 0.1 } as const

/** The shortest and the longest foot that a sock fits whose foot is knitted so long. */
export const feetOfSock = (knitted: number): { readonly least: number; readonly most: number } => ({
  least: knitted / (1 - sockShorter.least),
  most: knitted / (1 - sockShorter.most),
})

/** Round the foot, for choosing the pegs: about 95 % of its length (Knitty, sizing guidelines, 2023). */
export const roundFoot = (length: number): number => length * 0.95

export const euSizes = { least: 16, most: 50 } as const

/** The nearest EU shoe size for a foot; null for a foot that has none. */
export function euSizeOf(foot: number): number | null {
  const size = Math.round((foot + last.longerThanFoot) / parisPoint)
  return size >= euSizes.least && size <= euSizes.most ? size : null
}

const ukChildSizes = { least: 0, most: 13 } as const

/** The nearest UK child's size; null for a foot that has none. */
export function ukChildSizeOf(foot: number): number | null {
  const size = Math.round((foot + last.longerThanFoot) / barleycorn - 12)
  return size >= ukChildSizes.least && size <= ukChildSizes.most ? size : null
}
