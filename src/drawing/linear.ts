type Pair = readonly [number, number]

/** A straight scale: where a number of one range lies in the other, and back. Beyond the ends it goes on. */
export interface Linear {
  (value: number): number
  readonly invert: (value: number) => number
}

const along = ([a, b]: Pair, part: number): number => a * (1 - part) + b * part
const partOf = ([a, b]: Pair, value: number): number => (a === b ? 0.5 : (value - a) / (b - a))

export const linear = (domain: Pair, range: Pair): Linear =>
  Object.assign((value: number) => along(range, partOf(domain, value)), {
    invert: (value: number) => along(domain, partOf(range, value)),
  })
