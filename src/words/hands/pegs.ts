/** "peg 5", "pegs 5 and 6", "pegs 5, 6 and 7", "pegs 5 to 8", "pegs 8 to 5". Pegs are 0-based. */
export function namePegs(pegs: readonly number[]): string {
  const names = pegs.map((peg) => peg + 1)
  const [first = 0, second = first] = names
  const last = names.at(-1) ?? first
  if (names.length < 2) return `peg ${first}`
  const step = second - first
  const isRun = Math.abs(step) === 1 && names.every((peg, index) => peg === first + index * step)
  if (names.length > 3 && isRun) return `pegs ${first} to ${last}`
  return `pegs ${names.slice(0, -1).join(', ')} and ${last}`
}

const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

export const numberWord = (count: number): string => words[count] ?? `${count}`
