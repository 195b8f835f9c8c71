import type { Heading } from '../../loom/direction'
import type { RowEnd } from '../../loom/row'
import type { Pattern, Run } from '../pattern'
import { withRow } from './chart'

/** The pegs a row covers, 0-based; null for all of them. */
export function setRun(pattern: Pattern, row: number, run: Run | null): Pattern {
  const last = pattern.loom.pegs - 1
  const whole = run === null || (run.from <= 0 && run.to >= last)
  return withRow(pattern, row, { run: whole ? null : run })
}

export const setHeading = (pattern: Pattern, row: number, heading: Heading | null): Pattern =>
  withRow(pattern, row, { heading })

export const setEnd = (pattern: Pattern, row: number, end: RowEnd): Pattern =>
  withRow(pattern, row, { end })
