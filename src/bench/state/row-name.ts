import type { Work } from '../../pattern/work'

/** "Round 7" for a whole round of a ring, "Row 7" else (common practice). `row` is 0-based. */
export function rowName({ pattern, numbers }: Work, row: number): string {
  const part = pattern.chart.rows[row]
  const round = pattern.loom.shape === 'ring' && part?.run === null && part.end === 'on'
  return `${round ? 'Round' : 'Row'} ${numbers[row] ?? row + 1}`
}
