const sts = (count: number): string => `${count} ${count === 1 ? 'st' : 'sts'}`

/**
 * What is said of a repeat that leaves stitches over, of chart or words. `room`: stitches there are
 * for it, or how they are told, as "23 (24 less 1 edge st)".
 */
export const repeatLeaves = (
  block: number,
  room: number | string,
  copies: number,
  over: number,
): string =>
  `the repeat is ${sts(block)} and ${room} is not a multiple of ${block}: ${copies} ${copies === 1 ? 'repeat leaves' : 'repeats leave'} ${sts(over)}.`

/** The nearest repeat widths, narrower and wider, of which whole repeats fill the room. */
export function nearestDivisors(room: number, width: number): number[] {
  const divisors: number[] = []
  for (let other = 1; other <= room; other++) if (room % other === 0) divisors.push(other)
  const below = divisors.findLast((other) => other < width)
  const above = divisors.find((other) => other > width)
  return [below, above].filter((other) => other !== undefined)
}

/** Of these, those that are worth a thought: at least half as wide, at most twice. */
export const nearestWidths = (room: number, width: number): number[] =>
  nearestDivisors(room, width).filter((other) => other * 2 >= width && other <= width * 2)
