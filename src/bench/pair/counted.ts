/** "1 left cross", "12 left crosses". */
export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${n} ${n === 1 ? one : many}`

/** A run of things counted from 0, as people count them: "peg 4", "pegs 4-9". */
export const spanned = ({ from, to }: { from: number; to: number }, one: string): string =>
  from === to ? `${one} ${from + 1}` : `${one}s ${from + 1}-${to + 1}`
