import type { Site } from '../../loom/row'
import { type Stitch, wholeOf } from '../../stitches/stitch'
import type { Layout } from '../layout'
import type { Row, Run, Cell } from '../pattern'
import { layOut } from '../layout'
import { onPegs } from '../row'

/** The stitches of one round over all the pegs, each with its first peg. */
export type Round = readonly Site<Stitch>[]

/** A row over all the pegs that ends without a turn. */
export const isWhole = ({ run, end }: Row): boolean => run === null && end === 'on'

/** A whole row as it lies on the loom, its repeat as often as it fits. */
export const roundOf = (row: Row, layout: Layout): Round => onPegs(row, layout).sites

/** The same of a row that has a cell for each peg. */
export const roundOfCells = (cells: readonly Cell[]): Round =>
  roundOf(
    { cells, run: null, heading: null, end: 'on' },
    layOut({ columns: cells.length, repeat: null }, cells.length),
  )

/**
 * Cells for each peg: the round on the pegs of `line` that lie outside `run`, `stitch` on all others. A stitch
 * that an end of these pegs cuts becomes `stitch` too, and so do all that take or make loops where not as many
 * are made there as taken.
 */
export function besides(
  round: Round,
  pegs: number,
  run: Run,
  line: Run,
  stitch: Stitch,
): readonly Cell[] {
  const cells = Array.from({ length: pegs }, (): Cell => stitch)
  const lay = (from: number, to: number): void => {
    const here = round.filter(({ peg, stitch: { width } }) => peg >= from && peg + width - 1 <= to)
    const balanced =
      here.reduce((sum, { stitch: { makes, takes } }) => sum + makes - takes, 0) === 0
    for (const { stitch: placed, peg } of here) {
      if (!balanced && placed.takes !== placed.makes) continue
      cells.fill(null, peg, peg + placed.width)
      cells[peg] = wholeOf(placed)
    }
  }
  lay(line.from, Math.min(line.to, run.from - 1))
  lay(Math.max(line.from, run.to + 1), line.to)
  return cells
}

/** The first pegs of crosses that lie partly on the run and partly beside it: none of them can be worked whole. */
export const cutBy = (round: Round, { from, to }: Run): Round =>
  round.filter(
    ({ peg, stitch: { width } }) =>
      (peg < from && peg + width > from) || (peg <= to && peg + width - 1 > to),
  )
