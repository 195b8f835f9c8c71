import { listed, numbered } from './forms'

/** Pegs and stretches of pegs by their names. Arguments count from 0 but where they are printed numbers. */
interface Pegs {
  readonly from: number
  readonly to: number
}

/** "peg 5", "pegs 5-8", in a finding. */
export const pegsNamed = ({ from, to }: Pegs): string => numbered('peg', from + 1, to + 1)

/** "peg 5", "pegs 5 to 8", "pegs 8 to 5", in the order they are worked. Takes printed numbers. */
export const pegsFromTo = (first: number, last: number): string =>
  first === last ? `peg ${first}` : `pegs ${first} to ${last}`

/** "peg 5", "pegs 5 and 6", "pegs 5, 7 and 9", "pegs 5 to 8", "pegs 8 to 5". Takes printed numbers. */
export function numbersOfPegs(numbers: readonly number[]): string {
  const [first = 0, second = first] = numbers
  const last = numbers.at(-1) ?? first
  if (numbers.length < 2) return `peg ${first}`
  const step = second - first
  const isRun = Math.abs(step) === 1 && numbers.every((one, at) => one === first + at * step)
  return numbers.length > 2 && isRun ? pegsFromTo(first, last) : `pegs ${listed(numbers)}`
}

export const namePegs = (pegs: readonly number[]): string =>
  numbersOfPegs(pegs.map((peg) => peg + 1))

/** "pegs 2 to 25", "peg 1 and pegs 48 to 26": runs that go on over the join are named apart. */
export function namePegRuns(pegs: readonly number[]): string {
  const runs: [first: number, last: number][] = []
  for (const peg of pegs) {
    const run = runs.at(-1)
    if (run && Math.abs(peg - run[1]) === 1) run[1] = peg
    else runs.push([peg, peg])
  }
  return listed(runs.map(([first, last]) => pegsFromTo(first + 1, last + 1)))
}
