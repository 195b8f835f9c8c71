import type { Heading } from '../../../loom/direction'
import type { RowEnd } from '../../../loom/row'
import type { Run } from '../../../pattern/pattern'
import type { PatternRun } from '../../../pattern/work'
import { widthOf } from './hunks'
import type { ReadRow } from '../../read/reading'

/** Which pegs a row covers, which way, and how it ends. */
export interface Path {
  readonly heading: Heading
  readonly run: Run
  readonly end: RowEnd
}

export const pathOfRun = ({ row: { from, to, end }, heading }: PatternRun): Path => ({
  heading,
  run: { from, to },
  end,
})

/**
 * The path the words tell. What they leave open is as the chart has it; a part of a row that names
 * no peg begins where the chart's row does and goes as far as its stitches reach.
 */
export function pathOfWords(read: ReadRow, run: PatternRun, sameStitches: boolean): Path {
  const { row } = run
  const heading = read.heading ?? run.heading
  const { end } = read
  if (read.run) return { heading, run: read.run, end }
  const pegs = run.before.stacks.length
  const wholeRow = row.from === 0 && row.to === pegs - 1 && row.end === 'on' && end === 'on'
  const chart = { from: row.from, to: row.to }
  if (sameStitches || wholeRow || read.stitches.length === 0) return { heading, run: chart, end }
  const width = widthOf(read.stitches)
  const reached =
    heading === 'forward'
      ? { from: row.from, to: Math.min(row.from + width, pegs) - 1 }
      : { from: Math.max(0, row.to - width + 1), to: row.to }
  return { heading, run: reached, end }
}

export const samePath = (a: Path, b: Path): boolean =>
  a.heading === b.heading && a.end === b.end && a.run.from === b.run.from && a.run.to === b.run.to
