/** Timing for `npm run bench`: medians and ratios of one run, since machines are noisy. */

export interface Figure {
  readonly name: string
  /** Median of one call, milliseconds. */
  readonly median: number
  /** The quickest call: what it costs while nothing else is at work on the machine. */
  readonly least: number
}

/** Calls before it counts. */
export const warmUp = 200

/**
 * Median times of steps done one after the other; each gets the number of the call. `prepare` is
 * done before them and not timed.
 */
export function measureSteps(
  steps: Readonly<Record<string, (index: number) => unknown>>,
  calls: number,
  warm = warmUp,
  prepare?: () => unknown,
): Figure[] {
  const list = Object.entries(steps).map(([name, call]) => ({ name, call, times: [] as number[] }))
  for (let i = 0; i < warm + calls; i++) {
    prepare?.()
    for (const { call, times } of list) {
      const start = performance.now()
      call(i)
      if (i >= warm) times.push(performance.now() - start)
    }
  }
  return list.map(({ name, times }) => ({
    name,
    median: times.toSorted((a, b) => a - b)[times.length >> 1] as number,
    least: Math.min(...times),
  }))
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
