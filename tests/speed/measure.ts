/** Timing for `npm run bench`: medians and ratios of one run, since machines are noisy. */

export interface Figure {
  readonly name: string
  /** Median of one call, milliseconds. */
  readonly median: number
}

/** Median time of `calls` calls after a warm-up; `call` gets the number of the call. */
export function measure(name: string, calls: number, call: (index: number) => unknown): Figure {
  const warm = Math.min(calls, 200)
  for (let i = 0; i < warm; i++) call(i)
  const times: number[] = []
  for (let i = 0; i < calls; i++) {
    const start = performance.now()
    call(warm + i)
    times.push(performance.now() - start)
  }
  times.sort((a, b) => a - b)
  return { name, median: times[times.length >> 1] as number }
}

export const show = (value: number, digits = 3): string => value.toFixed(digits)

/** Print a table with its columns aligned. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const widths = head.map((cell, i) =>
    Math.max(cell.length, ...rows.map((row) => row[i]?.length ?? 0)),
  )
  const line = (row: readonly string[]) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join('  ')
  console.log(line(head))
  for (const row of rows) console.log(line(row))
}

/** A verdict in words: the figure beside the most it should be. */
export const against = (value: number, most: number): string =>
  `${value <= most ? 'within' : 'OVER'} ${most}`
